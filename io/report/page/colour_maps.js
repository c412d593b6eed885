// The colour maps of all pictures. Sequential: even steps to the eye and in grey, and the same to the colour-blind. Diverging: for
// what has a sign.
import { interpolateCividis, interpolatePuOr } from "d3-scale-chromatic";

export const sequential = (share) => interpolateCividis(share);
export const diverging = (share) => interpolatePuOr(1 - share);
