// The belt laid flat: bands of colour, contour lines, sets, junctions; the value under the pointer or the arrow keys.
import { bisectRight, ticks } from "d3-array";
import { contours } from "d3-contour";
import { bandColours, beyond, boundary, shareOf } from "./colour_maps.js";

const margin = { left: 54, top: 26, right: 30, bottom: 40 };

export class FlatMap {
  /** `pointed(index)` is told the belt's point nearest to the pointer. */
  constructor(canvas, view, pointed) {
    this.canvas = canvas;
    this.view = view;
    this.pointed = pointed;
    canvas.addEventListener("pointermove", (event) => this.point(this.nearest(event.offsetX, event.offsetY)));
    canvas.addEventListener("keydown", (event) => this.step(event));
    new ResizeObserver(() => this.draw()).observe(canvas);
  }

  show(surface, field, info, state) {
    Object.assign(this, { surface, field, info, state });
    this.draw();
  }

  get box() {
    return { left: margin.left, top: margin.top, right: this.canvas.clientWidth - margin.right, bottom: this.canvas.clientHeight - margin.bottom };
  }

  x(value) { const { x } = this.surface, b = this.box; return b.left + (value - x[0]) / (x.at(-1) - x[0]) * (b.right - b.left); }

  y(value) { const { y } = this.surface, b = this.box; return b.bottom - (value - y[0]) / (y.at(-1) - y[0]) * (b.bottom - b.top); }

  draw() {
    const { canvas, surface } = this;
    if (!surface || !canvas.clientWidth) return;
    const ratio = window.devicePixelRatio || 1;
    canvas.width = canvas.clientWidth * ratio;
    canvas.height = canvas.clientHeight * ratio;
    const pen = canvas.getContext("2d");
    pen.scale(ratio, ratio);
    this.drawBands(pen, ratio);
    this.drawContours(pen);
    this.drawPlaces(pen);
    this.drawAxes(pen);
    this.drawPeak(pen);
    if (this.marked !== undefined) this.drawCross(pen);
  }

  drawBands(pen, ratio) {
    const b = this.box, { surface, field } = this;
    const width = Math.round((b.right - b.left) * ratio), height = Math.round((b.bottom - b.top) * ratio);
    const image = pen.createImageData(width, height);
    const colours = bandColours(field.bands, this.info.signed);
    const columns = places(surface.x, width, false), rows = places(surface.y, height, true);
    for (let r = 0; r < height; ++r)
      for (let c = 0; c < width; ++c) {
        const [i, s] = columns[c], [j, t] = rows[r], k = i * surface.across + j, n = field.shown;
        const value = (1 - s) * ((1 - t) * n[k] + t * n[k + 1]) + s * ((1 - t) * n[k + surface.across] + t * n[k + surface.across + 1]);
        const band = Math.min(field.bands - 1, Math.floor(shareOf(value, field, this.info) * field.bands));
        const hatch = beyond(value, field) && (r + c) % Math.round(9 * ratio) < 2.5 * ratio;
        image.data.set(hatch ? (value > field.to ? [29, 42, 51, 255] : [255, 255, 255, 255]) : [...colours[band], 255], 4 * (r * width + c));
      }
    pen.putImageData(image, b.left * ratio, b.top * ratio);
  }

  /** Lines of d3-contour, whose points lie in the middle of its cells, on the belt's uneven grid. */
  trace(pen, value) {
    const { surface, field } = this;
    const [shape] = contours().size([surface.across, surface.along]).smooth(true).thresholds([value])(field.shown);
    const at = (nodes, index) => {
      const place = Math.min(nodes.length - 1, Math.max(0, index - 0.5)), i = Math.min(nodes.length - 2, Math.floor(place));
      return nodes[i] + (place - i) * (nodes[i + 1] - nodes[i]);
    };
    pen.beginPath();
    for (const polygon of shape.coordinates)
      for (const ring of polygon)
        ring.forEach(([j, i], k) => {
          const border = (a, count) => a <= 0.001 || a >= count - 0.001;
          const before = ring[Math.max(0, k - 1)];
          const outside = border(j, surface.across) && border(before[0], surface.across) || border(i, surface.along) && border(before[1], surface.along);
          pen[k === 0 || outside ? "moveTo" : "lineTo"](this.x(at(surface.x, i)), this.y(at(surface.y, j)));
        });
    pen.stroke();
  }

  drawContours(pen) {
    const { field } = this;
    if (this.info.widened > 0) return;  // lines would cover what they enclose
    pen.save();
    const b = this.box;
    pen.beginPath();
    pen.rect(b.left, b.top, b.right - b.left, b.bottom - b.top);
    pen.clip();
    pen.strokeStyle = this.info.signed ? "#555" : "#fff";
    pen.lineWidth = 0.7;
    for (let band = 1; band < field.bands; ++band) {
      const value = boundary(band, field, this.info);
      pen.setLineDash(this.info.signed && value < 0 ? [4, 3] : []);
      this.trace(pen, value);
    }
    const limit = this.state.limits[this.info.id];
    pen.setLineDash([]);
    if (limit !== undefined)
      for (const [style, width] of [["#fff", 4], ["#a3261f", 2]]) {
        pen.strokeStyle = style;
        pen.lineWidth = width;
        this.trace(pen, limit);
      }
    pen.restore();
  }

  drawPlaces(pen) {
    const b = this.box;
    this.drawBelow(pen);
    pen.strokeStyle = pen.fillStyle = "#1d2a33";
    pen.font = "12px sans-serif";
    pen.textAlign = "center";
    for (const set of this.state.sets) {
      const x = this.x(set.x);
      pen.lineWidth = 1.1;
      line(pen, x, b.top - 4, x, b.bottom);
      pen.fillText(set.name, x, b.top - 8);
    }
  }

  /** Rolls and junctions, dark on a light border so that they show on every colour. */
  drawBelow(pen) {
    const b = this.box;
    for (const [style, width, dashes] of [["#fff", 2.6, []], ["#1d2a33", 1.1, [6, 4]]]) {
      pen.strokeStyle = style;
      pen.lineWidth = width;
      for (const set of this.state.sets)
        for (const [x0, y0, x1, y1] of this.view.rollsBelow)
          if (this.x(set.x + x1) <= b.right) pen.strokeRect(this.x(set.x + x0), this.y(y1), this.x(x1) - this.x(x0), this.y(y0) - this.y(y1));
      pen.setLineDash(dashes);
      for (const junction of this.view.junctions)
        for (const side of [1, -1]) line(pen, b.left, this.y(side * junction), b.right, this.y(side * junction));
      pen.setLineDash([]);
    }
  }

  drawAxes(pen) {
    const b = this.box, { x, y } = this.surface;
    pen.fillStyle = pen.strokeStyle = "#55626a";
    pen.font = "12px sans-serif";
    pen.textAlign = "center";
    for (const value of ticks(x[0], x.at(-1), Math.max(3, (b.right - b.left) / 90))) {
      line(pen, this.x(value), b.bottom, this.x(value), b.bottom + 5);
      pen.fillText(value, this.x(value), b.bottom + 18);
    }
    pen.textAlign = "right";
    for (const value of ticks(y[0], y.at(-1), 5)) pen.fillText(value, b.left - 7, this.y(value) + 4);
    pen.font = "600 12px sans-serif";
    pen.fillStyle = "#1d2a33";
    pen.textAlign = "left";
    pen.fillText("along the unstretched belt [mm]", b.left, b.bottom + 35);
    pen.fillText("across [mm]", 2, 12);
  }

  drawPeak(pen) {
    for (const peak of this.state.peaks) {
      if (!peak || peak.field !== this.info.id) continue;
      const x = this.x(peak.x), y = this.y(peak.y);
      for (const [style, width] of [["#fff", 4], ["#1d2a33", 1.8]]) {
        pen.strokeStyle = style;
        pen.lineWidth = width;
        line(pen, x - 6, y - 6, x + 6, y + 6);
        line(pen, x - 6, y + 6, x + 6, y - 6);
      }
      pen.font = "600 12.5px sans-serif";
      const right = x < this.box.right - 220;
      pen.textAlign = right ? "left" : "right";
      const text = `${peak.value.toPrecision(3)} ${this.info.unit}, ${peak.name}`, low = y < this.box.top + 40 ? 42 : -8;
      pen.lineWidth = 5;
      pen.lineJoin = "round";
      pen.strokeStyle = "#fff";
      pen.strokeText(text, x + (right ? 12 : -12), y + low);
      pen.fillStyle = "#1d2a33";
      pen.fillText(text, x + (right ? 12 : -12), y + low);
    }
  }

  drawCross(pen) {
    const x = this.x(this.surface.x[Math.floor(this.marked / this.surface.across)]), y = this.y(this.surface.y[this.marked % this.surface.across]);
    pen.beginPath();
    pen.arc(x, y, 5, 0, 7);
    pen.lineWidth = 3.5;
    pen.strokeStyle = "#fff";
    pen.stroke();
    pen.lineWidth = 1.6;
    pen.strokeStyle = "#a3261f";
    pen.stroke();
  }

  nearest(px, py) {
    const b = this.box, { x, y, across } = this.surface;
    const i = closest(x, x[0] + (px - b.left) / (b.right - b.left) * (x.at(-1) - x[0]));
    return i * across + closest(y, y[0] + (b.bottom - py) / (b.bottom - b.top) * (y.at(-1) - y[0]));
  }

  step(event) {
    const { along, across } = this.surface, at = this.marked ?? Math.floor(along / 2) * across + Math.floor(across / 2);
    const [i, j] = [Math.floor(at / across), at % across];
    const moves = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, 1], ArrowDown: [0, -1] };
    if (!moves[event.key]) return;
    event.preventDefault();
    const held = (value, count) => Math.min(count - 1, Math.max(0, value));
    this.point(held(i + moves[event.key][0], along) * across + held(j + moves[event.key][1], across));
  }

  point(k) {
    if (k === this.marked) return;
    this.mark(k);
    this.pointed(k);
  }

  mark(k) {
    this.marked = k;
    this.draw();
  }
}

/** For each pixel the interval of the grid below it and the share of that before it. */
function places(nodes, pixels, downwards) {
  const from = nodes[0], span = nodes.at(-1) - from;
  return Array.from({ length: pixels }, (_, k) => {
    const share = (k + 0.5) / pixels, value = from + span * (downwards ? 1 - share : share);
    const i = Math.min(nodes.length - 2, Math.max(0, bisectRight(nodes, value) - 1));
    return [i, (value - nodes[i]) / (nodes[i + 1] - nodes[i])];
  });
}

function closest(nodes, value) {
  const i = Math.min(nodes.length - 1, Math.max(1, bisectRight(nodes, value)));
  return value - nodes[i - 1] < nodes[i] - value ? i - 1 : i;
}

function line(pen, x0, y0, x1, y1) {
  pen.beginPath();
  pen.moveTo(x0, y0);
  pen.lineTo(x1, y1);
  pen.stroke();
}
