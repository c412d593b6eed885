const assert = require("node:assert");
const path = require("node:path");
const { statSync } = require("node:fs");
const { test } = require("node:test");
const { pages, shipped, withPage } = require("./browser.cjs");

for (const width of [1280, 400])
  test(`the shipped case's report opens ${width} px wide with no error, no request and nothing to scroll sideways`, () =>
    withPage(shipped, async (page, seen) => {
      assert.deepEqual(seen.errors, []);
      assert.deepEqual(seen.requests, ["file://" + shipped]);
      assert.equal(await page.evaluate(() => document.documentElement.scrollWidth), width);
      await page.screenshot({ path: path.join(pages, `shipped-${width}.png`), fullPage: true });
    }, { viewport: { width, height: 900 } }));

test("the shipped case's report is no larger than 1.5 MB", () => assert.ok(statSync(shipped).size <= 1.5e6));

test("the first screen holds question, verdict, criteria and the belt", () =>
  withPage(shipped, async (page) => {
    const places = await page.evaluate(() => [".question", ".verdict", ".criteria tbody tr", ".first figure svg"]
      .map((what) => document.querySelector(what).getBoundingClientRect().bottom));
    for (const bottom of places) assert.ok(bottom < 900, `${places}`);
  }));

for (const width of [1280, 400])
  test(`hostile text is shown as text, ${width} px wide`, () =>
    withPage(path.join(pages, "hostile.html"), async (page, seen) => {
      assert.deepEqual(seen.errors, []);
      assert.match(await page.title(), /^<\/script><script>document/);
      assert.match(await page.textContent("h1"), /<img src=x onerror/);
      assert.equal(await page.locator("img").count(), 0);
      assert.equal(await page.evaluate(() => document.scripts.length), 2);
      assert.equal(await page.evaluate(() => document.documentElement.scrollWidth), width);
      await page.screenshot({ path: path.join(pages, `hostile-${width}.png`), fullPage: true });
    }, { viewport: { width, height: 900 } }));

test("without scripts every state stands there with its drawings", () =>
  withPage(shipped, async (page) => {
    const shown = await page.evaluate(() => [...document.querySelectorAll("#charts .of-state")].filter((block) => block.offsetHeight > 0).length);
    assert.equal(shown, 3);
    assert.ok(await page.locator("#map svg").first().isVisible());
  }, { javaScriptEnabled: false }));

test("without WebGL the map can still be read and a sentence says why nothing turns", () =>
  withPage(shipped, async (page, seen) => {
    assert.match(await page.textContent("#space-view"), /no WebGL/);
    assert.ok(await page.locator(".first figure svg").isVisible());
    await page.locator(".map-canvas").hover({ position: { x: 300, y: 150 } });
    assert.match(await page.textContent("#map-view .readout"), /longitudinal strain 0\.\d+ %/);
    assert.deepEqual(seen.errors.filter((text) => !/WebGL/i.test(text)), []);
  }, {}, ["--disable-gpu", "--disable-3d-apis"]));
