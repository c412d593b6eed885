// A page in Debian's chromium, watched: what it logs, what it asks the network for.
const { chromium } = require("playwright-core");
const path = require("node:path");

const pages = process.env.SWALE_PAGES;
const shipped = path.join(pages, "shipped", "report.html");

/** Opens a file; `options` of the browser's context. The caller closes `browser`. */
async function open(file, options = {}, flags = []) {
  const browser = await chromium.launch({ executablePath: process.env.SWALE_CHROMIUM, args: ["--no-sandbox", "--enable-unsafe-swiftshader", ...flags] });
  const context = await browser.newContext({ viewport: { width: 1280, height: 900 }, ...options });
  const page = await context.newPage();
  const seen = { errors: [], requests: [] };
  page.on("console", (message) => { if (message.type() === "error") seen.errors.push(message.text()); });
  page.on("pageerror", (error) => seen.errors.push(error.message));
  page.on("request", (request) => { if (!request.url().startsWith("data:")) seen.requests.push(request.url()); });
  await page.goto("file://" + file);
  if (options.javaScriptEnabled !== false)
    await page.waitForFunction(() => document.documentElement.dataset.ready === "yes", null, { timeout: 60000 });
  return { browser, page, seen };
}

/** Runs `body(page, seen)` on an open page and closes it whatever happens. */
async function withPage(file, body, options, flags) {
  const { browser, page, seen } = await open(file, options, flags);
  try {
    await body(page, seen);
  } finally {
    await browser.close();
  }
}

module.exports = { pages, shipped, withPage };
