const assert = require("node:assert");
const path = require("node:path");
const { test } = require("node:test");
const { pages, withPage } = require("./browser.cjs");

test("20,000 quads turn smoothly in software rendering", () =>
  withPage(path.join(pages, "fine.html"), async (page) => {
    await page.locator("#space-view canvas").scrollIntoViewIfNeeded();
    await page.locator("#space-view canvas").focus();
    const [quads, frames] = await page.evaluate(async () => {
      const view = JSON.parse(document.getElementById("report-data").textContent), [state] = view.states;
      const canvas = document.querySelector("#space-view canvas"), gl = canvas.getContext("webgl2"), pixel = new Uint8Array(4);
      const times = [];
      for (let i = 0; i < 40; ++i) {
        const from = performance.now();
        canvas.dispatchEvent(new KeyboardEvent("keydown", { key: "ArrowRight" }));
        gl.readPixels(0, 0, 1, 1, gl.RGBA, gl.UNSIGNED_BYTE, pixel);  // until it is drawn
        times.push(performance.now() - from);
        await new Promise((done) => requestAnimationFrame(done));
      }
      return [(state.x.length - 1) * 2 * (state.y.length - 1), times.slice(5).sort((a, b) => a - b)];
    });
    assert.equal(quads, 20000);
    const middle = frames[Math.floor(frames.length / 2)];
    console.log(`${quads} quads: ${middle.toFixed(1)} ms a frame in the middle, ${frames.at(-1).toFixed(1)} ms the slowest`);
    assert.ok(middle < 100, `${middle} ms a frame`);
  }));
