// The colour maps of all pictures. Sequential: even steps to the eye and in grey, and the same to the colour-blind. Diverging: for
// what has a sign.
import { interpolateCividis, interpolatePuOr } from "d3-scale-chromatic";

export const sequential = (share) => interpolateCividis(share);
export const diverging = (share) => interpolatePuOr(1 - share);

/** [red, green, blue] of each band, as the program's own pictures have them. */
export function bandColours(bands, signed) {
  const map = signed ? diverging : sequential;
  return Array.from({ length: bands }, (_, band) => map(Math.round(255 * band / Math.max(1, bands - 1)) / 255).match(/\d+/g).map(Number));
}
