// The colour maps of all pictures. Sequential: even steps to the eye and in grey, and the same to the colour-blind. Diverging: for
// what has a sign.
import { interpolateCividis, interpolatePuOr } from "d3-scale-chromatic";

export const sequential = (share) => interpolateCividis(share);
export const diverging = (share) => interpolatePuOr(1 - share);

/** Share of the scale at a value, 0 to 1; `info.power` below 1 tells small values apart. */
export function shareOf(value, field, info) {
  return Math.min(1, Math.max(0, (value - field.from) / (field.to - field.from))) ** info.power;
}

/** The value at the lower end of a band; the number of bands gives the upper end of the last. */
export function boundary(band, field, info) {
  return field.from + (field.to - field.from) * (band / field.bands) ** (1 / info.power);
}

/** Values beyond the scale, which are hatched. */
export function beyond(value, field) {
  const slack = 1e-4 * (field.to - field.from);
  return value > field.to + slack || value < field.from - slack;
}

/** [red, green, blue] of each band, as the program's own pictures have them. */
export function bandColours(bands, signed) {
  const map = signed ? diverging : sequential;
  return Array.from({ length: bands }, (_, band) => map(Math.round(255 * band / Math.max(1, bands - 1)) / 255).match(/\d+/g).map(Number));
}
