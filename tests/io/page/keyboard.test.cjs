const assert = require("node:assert");
const { test } = require("node:test");
const { shipped, withPage } = require("./browser.cjs");

test("Tab goes through the page in the order in which it is read", () =>
  withPage(shipped, async (page) => {
    const stops = [];
    for (let i = 0; i < 60; ++i) {
      await page.keyboard.press("Tab");
      const stop = await page.evaluate(() => {
        const at = document.activeElement;
        return at === document.body ? null : { top: at.getBoundingClientRect().top + window.scrollY, name: at.getAttribute("aria-label") || at.id || at.textContent.trim().slice(0, 30) || at.type,
          inBar: at.closest("#choices") !== null };
      });
      if (!stop) break;
      stops.push(stop);
    }
    assert.equal(stops[0].name, "To the answer");
    const fixed = stops.slice(1).filter((stop) => !stop.inBar);  // the bar of choices stays in sight
    for (let i = 1; i < fixed.length; ++i) assert.ok(fixed[i].top >= fixed[i - 1].top - 60, `${fixed[i - 1].name} before ${fixed[i].name}`);
    for (const name of ["Criteria", "field", "The belt on its rolls in space", "Map of the flattened belt"])
      assert.ok(stops.some((stop) => stop.name.startsWith(name)), `${name} is not reached: ${stops.map((stop) => stop.name)}`);
  }));

test("the belt, the map and a chart are read by keys alone", () =>
  withPage(shipped, async (page) => {
    await page.locator("#space-view canvas").focus();
    for (const key of ["ArrowLeft", "ArrowUp", "+", "Enter"]) await page.keyboard.press(key);
    const picked = await page.textContent("#space-view .readout");
    assert.match(picked, /longitudinal strain/);
    await page.locator(".map-canvas").focus();
    await page.keyboard.press("ArrowRight");
    assert.notEqual(await page.textContent("#space-view .readout"), picked);
    await page.locator('svg[data-drawing="along-2"]').focus();
    await page.keyboard.press("ArrowRight");
    assert.match(await page.locator('figure:has(svg[data-drawing="along-2"]) .readout').textContent(), /^at \d+ mm/);
  }));

test("a screen reader is told a name for every control, picture and region", () =>
  withPage(shipped, async (page) => {
    const nameless = await page.evaluate(() => [...document.querySelectorAll("canvas, svg[role=img], [role=region], input, select, button, table")]
      .filter((at) => !(at.getAttribute("aria-label") || at.querySelector(":scope > title, :scope > caption")?.textContent || at.labels?.length || at.textContent.trim()))
      .map((at) => at.outerHTML.slice(0, 80)));
    assert.deepEqual(nameless, []);
    const headings = await page.locator("h1, h2, h3").evaluateAll((list) => list.map((at) => Number(at.tagName[1])));
    headings.reduce((before, level) => { assert.ok(level <= before + 1); return level; }, 0);
  }));
