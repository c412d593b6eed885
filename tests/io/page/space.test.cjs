const assert = require("node:assert");
const path = require("node:path");
const { execFileSync } = require("node:child_process");
const { test } = require("node:test");
const { pages, shipped, withPage } = require("./browser.cjs");

const canvas = "#space-view canvas";

async function picture(page) {
  await page.evaluate(() => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done))));
  return (await page.locator(canvas).screenshot()).toString("base64");
}

/** {name: [value, unit]} of the readout beside the view. */
async function readout(page) {
  const rows = await page.locator("#space-view .readout tr").evaluateAll((lines) => lines.map((line) => [...line.cells].map((cell) => cell.textContent)));
  return Object.fromEntries(rows.map(([name, value]) => [name, value.split(" ")]));
}

test("dragging turns the belt and the button turns it back", () =>
  withPage(shipped, async (page) => {
    await page.locator(canvas).scrollIntoViewIfNeeded();
    const before = await picture(page), box = await page.locator(canvas).boundingBox();
    await page.mouse.move(box.x + 300, box.y + 200);
    await page.mouse.down();
    await page.mouse.move(box.x + 420, box.y + 230, { steps: 6 });
    await page.mouse.up();
    assert.notEqual(await picture(page), before);
    await page.getByRole("button", { name: "turn back" }).click();
    assert.equal(await picture(page), before);
    await page.mouse.move(box.x + 300, box.y + 200);
    await page.mouse.wheel(0, -300);
    assert.notEqual(await picture(page), before, "the wheel zooms");
  }));

test("the values of a picked point are those in result.h5", () =>
  withPage(shipped, async (page, seen) => {
    await page.locator(canvas).scrollIntoViewIfNeeded();
    const box = await page.locator(canvas).boundingBox();
    for (const [x, y] of [[0.45, 0.5], [0.6, 0.38], [0.33, 0.62]]) {
      await page.mouse.click(box.x + x * box.width, box.y + y * box.height);
      const read = await readout(page);
      const names = { "longitudinal strain": "strain", "tension along": "tension", "curvature across": "curvature", "contact pressure": "pressure",
        "surface strain, larger face": "surface", "wrinkling mode, symmetric: motion up": "mode" };
      const stored = JSON.parse(execFileSync(process.env.SWALE_PYTHON, [path.join(__dirname, "stored_point.py"), path.join(pages, "shipped", "result.h5"),
        "starting", read["along, x"][0], read["across, y"][0]]));
      for (const [name, key] of Object.entries(names)) {
        const shown = read[name][0], digit = 10 ** -(shown.split(".")[1] || "").length;
        assert.ok(Math.abs(Number(shown) - stored[key]) <= 0.51 * digit + stored.quantum[key], `${name}: ${shown} shown, ${stored[key]} stored`);
      }
    }
    assert.deepEqual(seen.errors, []);
  }));

test("field, state and displacement can be chosen and change the picture", () =>
  withPage(shipped, async (page, seen) => {
    await page.locator(canvas).scrollIntoViewIfNeeded();
    const shown = new Set([await picture(page)]);
    for (const field of ["surface", "tension", "curvature", "pressure", "mode_symmetric", "mode_antisymmetric"]) {
      await page.selectOption("#field", field);
      shown.add(await picture(page));
      await page.locator(canvas).screenshot({ path: path.join(pages, `space-${field}.png`) });
    }
    assert.equal(shown.size, 7);
    await page.selectOption("#field", "strain");
    await page.getByLabel("running empty").check();
    shown.add(await picture(page));
    assert.equal(await page.locator("#charts .of-state:visible h3").textContent(), "running empty");
    await page.locator("#space-view input[type=range]").first().fill("0");
    shown.add(await picture(page));
    assert.equal(shown.size, 9);
    assert.deepEqual(seen.errors, []);
  }));
