const assert = require("node:assert");
const path = require("node:path");
const { execFileSync } = require("node:child_process");
const { test } = require("node:test");
const { pages, shipped, withPage } = require("./browser.cjs");

for (const [format, size] of [["A4", "595"], ["Letter", "612"]])
  test(`printed on ${format} all of it is there, page after page`, () =>
    withPage(shipped, async (page) => {
      const file = path.join(pages, `shipped-${format}.pdf`);
      await page.pdf({ path: file, format, printBackground: true, preferCSSPageSize: false });
      const facts = execFileSync("pdfinfo", [file], { encoding: "utf8" });
      const count = Number(facts.match(/Pages:\s+(\d+)/)[1]);
      assert.ok(count >= 6 && count <= 16, facts);
      assert.match(facts, new RegExp(`Page size:\\s+${size}`));
      const text = execFileSync("pdftotext", ["-layout", file, "-"], { encoding: "utf8" });
      const sheets = text.split("\f").slice(0, count);
      sheets.forEach((sheet, i) => assert.ok(sheet.trim().length > 0 || i === 0, `page ${i + 1} is blank`));
      for (const part of ["WITHIN LIMITS", "edge tension / rated tension", "Lock out the drive", "Convergence record", 'distance = "2400 mm"', "Signature", "rated_tension"])
        assert.ok(text.includes(part), `${part} is missing in print`);
    }));

test("no table or drawing is wider than the printed page", () =>
  withPage(shipped, async (page) => {
    await page.emulateMedia({ media: "print" });
    await page.setViewportSize({ width: Math.round((210 - 28) / 25.4 * 96), height: 1000 });  // A4 less its margins
    const wide = await page.evaluate(() => [...document.querySelectorAll("table, figure svg, pre")].filter((at) => at.offsetParent !== null || at.getBoundingClientRect().width > 0)
      .filter((at) => at.getBoundingClientRect().right > document.documentElement.clientWidth + 1).map((at) => at.outerHTML.slice(0, 60)));
    assert.deepEqual(wide, []);
  }));
