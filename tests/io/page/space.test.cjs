const assert = require("node:assert");
const path = require("node:path");
const { execFileSync } = require("node:child_process");
const { statSync } = require("node:fs");
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
    await page.locator(canvas).focus();
    await page.mouse.wheel(0, -300);
    assert.notEqual(await picture(page), before, "the wheel zooms");
  }));

/** Picks points of "starting" in a folder's report and holds what is told against its result.h5. */
async function pickedAsStored(page, folder, levels) {
  await page.locator(canvas).scrollIntoViewIfNeeded();
  const box = await page.locator(canvas).boundingBox();
  for (const [x, y] of [[0.45, 0.5], [0.6, 0.38], [0.33, 0.62]]) {
    await page.mouse.click(box.x + x * box.width, box.y + y * box.height);
    const read = await readout(page);
    const names = { "longitudinal strain": "strain", "tension along": "tension", "curvature across": "curvature", "contact pressure": "pressure",
      "surface strain, larger face": "surface", "wrinkling mode, symmetric: motion up": "mode" };
    const stored = JSON.parse(execFileSync(process.env.SWALE_PYTHON, [path.join(__dirname, "stored_point.py"), path.join(folder, "result.h5"),
      "starting", read["along, x"][0], read["across, y"][0], ...levels]));
    for (const [name, key] of Object.entries(names)) {
      const shown = read[name][0], digit = 10 ** -(shown.split(".")[1] || "").length;
      assert.ok(Math.abs(Number(shown) - stored[key]) <= 0.51 * digit + stored.quantum[key], `${name}: ${shown} shown, ${stored[key]} stored`);
    }
  }
}

test("the values of a picked point are those in result.h5", () =>
  withPage(shipped, async (page, seen) => {
    await pickedAsStored(page, path.join(pages, "shipped"), ["65535", "65535"]);
    assert.deepEqual(seen.errors, []);
  }));

test("of eight states of a whole belt the picture is thinner, says so, and its values are those in result.h5", () =>
  withPage(path.join(pages, "many", "report.html"), async (page, seen) => {
    await page.getByLabel("starting").check();
    assert.match(await page.textContent("#map-view"), /This picture has \d+ by \d+ points of the \d+ by \d+ in result\.h5/);
    await pickedAsStored(page, path.join(pages, "many"), ["4095", "255"]);
    assert.ok(statSync(path.join(pages, "many", "report.html")).size < 1500000);
    assert.deepEqual(seen.errors, []);
  }));

test("contact pressure is drawn wider than it is and says so", () =>
  withPage(shipped, async (page, seen) => {
    await page.selectOption("#field", "pressure");
    const said = await page.textContent("#space-view .legend");
    assert.match(said, /even in the square root/);
    assert.match(said, /drawn 30 mm to either side/);
    assert.deepEqual(seen.errors, []);
  }));

test("what lies beyond the colours at a held end is hatched and told", () =>
  withPage(path.join(pages, "held", "report.html"), async (page, seen) => {
    assert.match(await page.textContent("#space-view .legend"), /Hatched: beyond the scale, to 1\.\d+ %/);
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
