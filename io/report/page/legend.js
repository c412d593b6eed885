// The scale of colours as a picture.
import { bandColours, beyond, boundary } from "./colour_maps.js";

const space = "http://www.w3.org/2000/svg";

function shape(name, attributes, text = "") {
  const made = document.createElementNS(space, name);
  for (const [key, value] of Object.entries(attributes)) made.setAttribute(key, value);
  made.textContent = text;
  return made;
}

/** Bands from left to right with their boundaries below. */
export function legend(field, info, room) {
  const width = Math.min(640, room || 640), row = 16, colours = bandColours(field.bands, info.signed);
  const svg = shape("svg", { viewBox: `0 0 ${width} 54`, width, height: 54, role: "img" });
  svg.append(shape("title", {}, `Scale: ${info.name}, ${field.from} to ${field.to} ${info.unit}`));
  const each = (width - 40) / field.bands, step = boundary(1, field, info) - field.from;
  const decimals = (String(Number(step.toPrecision(3))).split(".")[1] || "").length;
  const label = (band) => info.power === 1 ? (field.from + band * step).toFixed(decimals) : String(Number(boundary(band, field, info).toPrecision(2)));
  const every = Math.ceil(field.bands / Math.max(3, width / 58));
  colours.forEach((colour, band) =>
    svg.append(shape("rect", { x: 20 + band * each, y: 0, width: each + 0.3, height: row, fill: `rgb(${colour})` })));
  for (let band = 0; band <= field.bands; band += every)
    svg.append(shape("text", { x: 20 + band * each, y: row + 16, "text-anchor": "middle", "font-size": 12, fill: "#55626a" },
      label(band)));
  svg.append(shape("text", { x: 20, y: row + 34, "font-size": 12.5, "font-weight": 600, fill: "#1d2a33" }, `${info.name} [${info.unit}]`));
  const box = document.createElement("div");
  box.append(svg, ...remarks(field, info).map((text) => Object.assign(document.createElement("p"), { className: "hint", textContent: text })));
  return box;
}

/** What the colours don't say by themselves. */
function remarks(field, info) {
  const said = [];
  if (info.power !== 1) said.push("The bands are even in the square root of the value, so that small values are told apart.");
  if (info.widened > 0) said.push(`Each value is drawn ${info.widened} mm to either side along the belt, since it stands in narrow lines; values that are read are a point's own.`);
  const ends = [field.low, field.high].filter((value) => beyond(value, field));
  if (ends.length > 0)
    said.push(`Hatched: beyond the scale, to ${ends.map((value) => `${value.toPrecision(3)} ${info.unit}`).join(" and ")}, next to what holds the belt, where values are singular.`);
  return said;
}
