// A chart that the program drew: a line under the pointer, or moved by the arrow keys, and the values of all lines there.
import { bisectRight } from "d3-array";

const space = "http://www.w3.org/2000/svg";

function valueAt(series, x) {
  const i = Math.min(series.x.length - 1, Math.max(1, bisectRight(series.x, x)));
  const [x0, x1, y0, y1] = [series.x[i - 1], series.x[i], series.y[i - 1], series.y[i]];
  if (x < series.x[0] || x > series.x.at(-1) || y0 === null || y1 === null) return null;
  return x1 === x0 ? y1 : y0 + (x - x0) / (x1 - x0) * (y1 - y0);
}

/** Enough to tell a hundredth of the axis apart, and none of an axis in mm. */
function decimals(range) {
  return Math.max(0, 2 - Math.floor(Math.log10(range)));
}

export class ChartHover {
  constructor(svg, chart) {
    Object.assign(this, { svg, chart });
    this.line = document.createElementNS(space, "path");
    this.line.setAttribute("stroke", "#a3261f");
    this.line.setAttribute("stroke-width", "1.2");
    svg.append(this.line);
    this.readout = document.createElement("div");
    this.readout.className = "readout";
    this.readout.setAttribute("role", "status");
    this.readout.textContent = "Point at the chart, or move along it with the arrow keys, to read it.";
    svg.closest("figure").querySelector("figcaption").prepend(this.readout);
    svg.setAttribute("tabindex", "0");
    svg.addEventListener("pointermove", (event) => this.follow(event));
    svg.addEventListener("keydown", (event) => this.step(event));
  }

  follow(event) {
    const at = new DOMPoint(event.clientX, event.clientY).matrixTransform(this.svg.getScreenCTM().inverse());
    const [left, , right] = this.chart.plot;
    if (at.x < left || at.x > right) return;
    this.read(this.chart.x[0] + (at.x - left) / (right - left) * (this.chart.x[1] - this.chart.x[0]));
  }

  step(event) {
    const by = { ArrowLeft: -1, ArrowRight: 1 }[event.key];
    if (!by) return;
    event.preventDefault();
    const [from, to] = this.chart.x, now = this.at ?? (from + to) / 2;
    this.read(Math.min(to, Math.max(from, now + by * (to - from) / 100)));
  }

  read(x) {
    this.at = x;
    const [left, top, right, bottom] = this.chart.plot, [from, to] = this.chart.x;
    const px = left + (x - from) / (to - from) * (right - left);
    this.line.setAttribute("d", `M${px} ${top}V${bottom}`);
    const values = this.chart.series.map((series) => [series.name, valueAt(series, x)]).filter(([, value]) => value !== null);
    this.readout.replaceChildren(...[`at ${x.toFixed(decimals(to - from))} ${this.chart.xUnit}`, ...values.map(([name, value]) =>
      `${name} ${value.toPrecision(3)} ${this.chart.yUnit}`)].map((text) => Object.assign(document.createElement("span"), { textContent: text })));
  }
}
