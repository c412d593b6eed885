// The scale of colours as a picture.
import { bandColours } from "./colour_maps.js";

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
  const each = (width - 40) / field.bands, step = (field.to - field.from) / field.bands;
  const decimals = (String(Number(step.toPrecision(3))).split(".")[1] || "").length;
  const every = Math.ceil(field.bands / Math.max(3, width / 58));
  colours.forEach((colour, band) =>
    svg.append(shape("rect", { x: 20 + band * each, y: 0, width: each + 0.3, height: row, fill: `rgb(${colour})` })));
  for (let band = 0; band <= field.bands; band += every)
    svg.append(shape("text", { x: 20 + band * each, y: row + 16, "text-anchor": "middle", "font-size": 12, fill: "#55626a" },
      (field.from + band * step).toFixed(decimals)));
  svg.append(shape("text", { x: 20, y: row + 34, "font-size": 12.5, "font-weight": 600, fill: "#1d2a33" }, `${info.name} [${info.unit}]`));
  return svg;
}
