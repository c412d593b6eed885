const assert = require("node:assert");
const path = require("node:path");
const { readFileSync } = require("node:fs");
const { test } = require("node:test");
const { pages, shipped, withPage } = require("./browser.cjs");

const along = readFileSync(path.join(pages, "shipped", "along.csv"), "utf8").trim().split("\n").map((line) => line.split(","));

/** Edge strain of the state in along.csv, between its rows [%]. */
function edgeStrain(state, x) {
  const rows = along.filter((row) => row[0] === state).map((row) => [Number(row[1]), 100 * Number(row[3])]);
  const next = rows.findIndex((row) => row[0] >= x), [x0, y0] = rows[next - 1], [x1, y1] = rows[next];
  return y0 + (x - x0) / (x1 - x0) * (y1 - y0);
}

test("a chart under the pointer tells the values of along.csv", () =>
  withPage(shipped, async (page) => {
    const svg = page.locator('svg[data-drawing="along-2"]');
    await svg.scrollIntoViewIfNeeded();
    const box = await svg.boundingBox();
    for (const share of [0.3, 0.5, 0.7]) {
      await page.mouse.move(box.x + share * box.width, box.y + box.height / 2);
      const told = await page.locator('figure:has(svg[data-drawing="along-2"]) .readout span').allTextContents();
      const x = Number(told[0].match(/at (\d+) mm/)[1]), value = Number(told[1].match(/edge ([\d.]+) %/)[1]);
      assert.ok(Math.abs(value - edgeStrain("starting", x)) < 0.0011, `${told} at ${x}, along.csv ${edgeStrain("starting", x)}`);
    }
  }));

test("every chart of the chosen state answers to the pointer", () =>
  withPage(shipped, async (page, seen) => {
    const charts = page.locator("#charts .of-state.shown svg[data-drawing]");
    const count = await charts.count();
    assert.equal(count, 4);
    for (let i = 0; i < count; ++i) {
      await charts.nth(i).scrollIntoViewIfNeeded();
      await charts.nth(i).hover({ position: { x: 350, y: 150 } });
      const readout = page.locator("#charts .of-state.shown figure:has(svg[data-drawing])").nth(i).locator(".readout");
      assert.match(await readout.textContent(), /^at -?\d+ mm/);
    }
    assert.deepEqual(seen.errors, []);
  }));

test("the map under the pointer tells a point and marks it in space too", () =>
  withPage(shipped, async (page) => {
    await page.locator(".map-canvas").scrollIntoViewIfNeeded();
    await page.locator(".map-canvas").hover({ position: { x: 420, y: 150 } });
    assert.match(await page.textContent("#map-view .readout"), /^x [\d.]+ mm, y -?[\d.]+ mm: longitudinal strain 0\.\d+ %/);
    assert.match(await page.textContent("#space-view .readout"), /along, x/);
  }));
