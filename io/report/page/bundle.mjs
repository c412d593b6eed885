// Bundles the report's page into one C++ file: script, style, their hashes for the content policy, the licences of what is
// inside, and the colour maps that the drawings share with it.
//   node bundle.mjs NODE_MODULES OUT.cpp
import { createHash } from "node:crypto";
import { readFileSync, writeFileSync } from "node:fs";
import { createRequire } from "node:module";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";

const here = dirname(fileURLToPath(import.meta.url));
const [modules, out] = process.argv.slice(2);
const require = createRequire(join(modules, "any.js"));
const { buildSync } = require("esbuild");

/** Text of one bundled entry and the packages that went into it. */
function bundled(entry, options) {
  const result = buildSync({ entryPoints: [join(here, entry)], bundle: true, minify: true, write: false, metafile: true,
    nodePaths: [modules], legalComments: "none", charset: "ascii", target: "es2020", logLevel: "warning", ...options });
  const inside = new Set();
  for (const [file, part] of Object.entries(Object.values(result.metafile.outputs)[0].inputs)) {
    const found = file.match(/node_modules\/((?:@[^/]+\/)?[^/]+)\//);
    if (found && part.bytesInOutput > 0) inside.add(found[1]);
  }
  return { text: result.outputFiles[0].text, inside: [...inside].sort() };
}

function licence(name) {
  const folder = join(modules, name);
  const { version, license } = JSON.parse(readFileSync(join(folder, "package.json"), "utf8"));
  return `${name} ${version}, ${license}\n\n${readFileSync(join(folder, "LICENSE"), "utf8").trim()}\n`;
}

const policyHash = (text) => `'sha256-${createHash("sha256").update(text, "utf8").digest("base64")}'`;

/** Raw string literals, as long as compilers take them. */
function literal(text) {
  if (text.includes(')part"')) throw new Error("the text ends a raw string");
  const parts = [];
  for (let at = 0; at < text.length; at += 15000) parts.push(`R"part(${text.slice(at, at + 15000)})part"`);
  return parts.join("\n") || '""';
}

function colourTable(map) {
  const entries = [];
  for (let i = 0; i < 256; ++i) {
    const [r, g, b] = rgb(map(i / 255));
    entries.push(`{${r}, ${g}, ${b}}`);
  }
  return entries.join(", ");
}

/** "rgb(1, 2, 3)" or "#010203" as numbers. */
function rgb(text) {
  if (text.startsWith("#")) return [1, 3, 5].map((at) => parseInt(text.slice(at, at + 2), 16));
  return text.match(/\d+/g).map(Number);
}

const script = bundled("main.js", { format: "iife" });
const style = bundled("style.css", {});
const maps = bundled("colour_maps.js", { format: "cjs", platform: "node" });
const module_ = { exports: {} };
new Function("module", "exports", maps.text)(module_, module_.exports);
const { sequential, diverging } = module_.exports;

const licences = script.inside.map(licence).join("\n----\n\n");
writeFileSync(out, `// Made by io/report/page/bundle.mjs.
#include "io/report/page_parts.h"

namespace swale::page_parts {

const std::string_view script = ${literal(script.text)};
const std::string_view style = ${literal(style.text)};
const std::string_view script_hash = "${policyHash(script.text)}";
const std::string_view style_hash = "${policyHash(style.text)}";
const std::string_view licences = ${literal(licences)};
const ColourTable sequential = {{${colourTable(sequential)}}};
const ColourTable diverging = {{${colourTable(diverging)}}};

}  // namespace swale::page_parts
`);
