const assert = require("node:assert");
const path = require("node:path");
const { test } = require("node:test");
const { pages, withPage } = require("./browser.cjs");

const study = path.join(pages, "study.html"), hostile = path.join(pages, "hostile-study.html");

test("a study's report loads without an error or a request and fits the window", async () => {
  for (const file of [study, hostile])
    for (const width of [1280, 400])
      await withPage(file, async (page, seen) => {
        assert.deepEqual(seen.errors, []);
        assert.deepEqual(seen.requests, ["file://" + file]);
        assert.ok(await page.evaluate(() => document.documentElement.scrollWidth) <= width);
        assert.notEqual(await page.title(), "taken");
        assert.equal(await page.locator("img").count(), 0);
        await page.screenshot({ path: path.join(pages, `${path.basename(file, ".html")}-${width}.png`) });
      }, { viewport: { width, height: 900 } });
});

test("a study's chart under the pointer tells the required distance", () =>
  withPage(study, async (page) => {
    const svg = page.locator('#study-charts svg[data-drawing="chart-1"]');
    await svg.scrollIntoViewIfNeeded();
    const box = await svg.boundingBox();
    for (const share of [0.25, 0.5, 0.75]) {
      await page.mouse.move(box.x + share * box.width, box.y + box.height / 2);
      const told = await page.locator('figure:has(svg[data-drawing="chart-1"]) .readout span').allTextContents();
      // The made-up belt needs 1.2 widths and one more for each rated tension.
      const tension = Number(told[0].match(/at ([\d.]+) of the rated one/)[1]), needed = Number(told[1].match(/([\d.]+) belt widths/)[1]);
      assert.ok(Math.abs(needed - (1.2 + tension)) < 0.012, `${told}`);
    }
  }));

test("a study's tables are reached by the keyboard and printed whole", () =>
  withPage(study, async (page) => {
    for (const name of ["Verdicts", "Share of the limit that binds [%]"])
      assert.equal(await page.getByRole("region", { name, exact: true }).getAttribute("tabindex"), "0");
    const pdf = await page.pdf({ format: "A4" });
    assert.ok(pdf.length > 20000);
  }));
