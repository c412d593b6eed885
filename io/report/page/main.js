// Brings the report to life: what the program wrote stays readable without it.
import { beltSurface } from "./belt_surface.js";
import { BeltSpace } from "./belt_space.js";
import { ChartHover } from "./chart_hover.js";
import { Choices, element } from "./choices.js";
import { FlatMap } from "./flat_map.js";
import { legend } from "./legend.js";
import { pageData } from "./read_data.js";

const view = pageData();
const surfaces = new Map();

function surfaceOf(i) {
  if (!surfaces.has(i)) surfaces.set(i, beltSurface(view.states[i], view));
  return surfaces.get(i);
}

function slider(text, low, high, value, format, changed) {
  const input = element("input", { type: "range", min: low, max: high, step: (high - low) / 100, value });
  const shown = element("output", { textContent: format(value) });
  input.addEventListener("input", () => { shown.textContent = format(Number(input.value)); changed(); });
  return { label: element("label", {}, text + " ", input, " ", shown), get value() { return Number(input.value); } };
}

/** Digits that the packed values can bear. */
function printed(value, field) {
  const decimals = Math.max(0, Math.min(8, Math.floor(-Math.log10(field.step || 1e-8))));
  return value.toFixed(Math.min(decimals, Math.max(0, 3 - Math.floor(Math.log10(Math.max(Math.abs(value), 1e-9))))));
}

function readoutTable(surface, k, chosen) {
  const table = element("table");
  const row = (name, value, unit, css = "") => {
    const line = table.insertRow();
    line.className = css;
    line.append(element("th", { scope: "row", textContent: name }), element("td", { className: "number", textContent: `${value} ${unit}` }));
  };
  row("along, x", surface.x[Math.floor(k / surface.across)].toFixed(1), "mm");
  row("across, y", surface.y[k % surface.across].toFixed(1), "mm");
  for (const info of view.fields) {
    const field = surface.fields[info.id];
    if (field) row(info.name, printed(field.numbers[k], field), info.unit, info.id === chosen ? "chosen" : "");
  }
  return table;
}

function hoverCharts() {
  for (const svg of document.querySelectorAll("svg[data-drawing]")) {
    const chart = view.charts[svg.dataset.drawing];
    if (chart) new ChartHover(svg, chart);
  }
}

class Report {
  constructor() {
    document.documentElement.classList.add("scripted");
    this.blocks = [...document.querySelectorAll(".of-state")];
    const numbers = [...new Set(this.blocks.map((block) => Number(block.dataset.state)))];
    this.stateOfView = numbers;  // the i-th state shown is this one of the run
    this.choices = new Choices(document.getElementById("choices"), view, Math.max(0, numbers.indexOf(view.leading)), () => this.show());
    this.readout = element("div", { className: "readout", role: "status" });
    this.makeMap();
    this.makeSpace();
    hoverCharts();
  }

  makeMap() {
    const host = document.getElementById("map-view");
    const canvas = element("canvas", { tabIndex: 0, className: "map-canvas" });
    canvas.setAttribute("role", "img");
    canvas.setAttribute("aria-label", "Map of the flattened belt; arrow keys move the reading point");
    this.mapReadout = element("div", { className: "readout", role: "status", textContent: "Point at the map, or move on it with the arrow keys, to read it." });
    this.mapLegend = element("div", { className: "legend" });
    host.append(element("div", { className: "stage" }, canvas), this.mapLegend, this.mapReadout);
    host.hidden = false;
    this.map = new FlatMap(canvas, view, (k) => this.pointed(k));
  }

  mapHint(info, state) {
    const limit = state.limits[info.id];
    const thinned = state.thinned ? `This picture has ${this.surface.along} by ${this.surface.across} points of the ${state.solution[0]} by ${state.solution[1]} in result.h5, each with its own values. ` : "";
    return element("p", { className: "hint", textContent: thinned + "Lines across: sets, with their rolls as boxes; broken lines along: junctions" +
      (limit === undefined ? "." : `; red line: the limit of ${limit.toPrecision(3)} ${info.unit}; cross: the most at the edge.`) });
  }

  makeSpace() {
    const host = document.getElementById("space-view");
    const canvas = element("canvas", { tabIndex: 0 });
    canvas.setAttribute("role", "img");
    canvas.setAttribute("aria-label", "The belt on its rolls in space; arrow keys turn it, plus and minus zoom, 0 turns it back, Enter reads the point in the middle");
    try {
      this.space = new BeltSpace(canvas, view, (k) => this.picked(k));
    } catch {
      document.documentElement.classList.add("no-webgl");
      host.append(element("p", { className: "hint", textContent: "This browser has no WebGL, so the belt can't be turned here; the picture at the top shows it at rest, and the map below can be read." }));
      host.hidden = false;
      return;
    }
    this.stretch = slider("displacement ×", 0, 4, 1, (v) => v.toFixed(2), () => this.show());
    this.amplitude = slider("mode's motion", 0, 400, 150, (v) => `${v.toFixed(0)} mm`, () => this.show());
    const home = element("button", { type: "button", textContent: "turn back" });
    home.addEventListener("click", () => this.space.home());
    this.spaceLegend = element("div", { className: "legend" });
    host.append(
      element("div", { className: "controls" }, this.stretch.label, this.amplitude.label, home),
      element("div", { className: "space" }, element("div", { className: "stage" }, canvas, this.spaceLegend), element("div", {},
        element("p", { className: "hint", textContent: "Drag to turn, click on the belt to read a point; after that the wheel zooms. Displacement counts from the flat sheet: 0 lays the belt flat, 1 is true." }),
        this.readout)));
    host.hidden = false;
  }

  picked(k) {
    this.at = k;
    this.map.mark(k);
    this.space.putMark(k);
    this.tell();
  }

  pointed(k) {
    this.at = k;
    this.space?.putMark(k);
    this.tell();
  }

  tell() {
    if (this.at === undefined) return;
    const { surface } = this, info = view.fields.find((field) => field.id === this.choices.field), field = surface.fields[info.id];
    this.readout.replaceChildren(readoutTable(surface, this.at, info.id));
    this.mapReadout.textContent = `x ${surface.x[Math.floor(this.at / surface.across)].toFixed(1)} mm, y ${surface.y[this.at % surface.across].toFixed(1)} mm: ` +
      `${info.name} ${printed(field.numbers[this.at], field)} ${info.unit}`;
  }

  async show() {
    const i = this.choices.state, state = view.states[i], surface = await surfaceOf(i);
    if (this.surface !== surface) this.at = this.map.marked = undefined;
    if (this.space && this.surface !== surface) this.space.markedPoint = undefined;
    this.surface = surface;
    this.choices.allow(Object.keys(surface.fields));
    const info = view.fields.find((field) => field.id === this.choices.field), field = surface.fields[info.id];
    for (const block of this.blocks) block.classList.toggle("shown", Number(block.dataset.state) === this.stateOfView[i]);
    this.map.show(surface, field, info, state);
    this.mapLegend.replaceChildren(legend(field, info, this.mapLegend.clientWidth), this.mapHint(info, state));
    if (!this.space) return;
    const motion = surface.motion[info.id];
    this.amplitude.label.hidden = !motion;
    this.space.show(surface, field, info, this.stretch.value, motion, this.amplitude.value);
    this.spaceLegend.replaceChildren(legend(field, info, this.spaceLegend.clientWidth));
    this.tell();
  }
}

if (view.states.length > 0) {
  const report = new Report();
  report.show().then(() => { document.documentElement.dataset.ready = "yes"; });
} else {
  hoverCharts();
  document.documentElement.dataset.ready = "yes";
}
