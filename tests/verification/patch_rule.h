#pragma once

#include "mesh/quadrature.h"

namespace swale::verification {

/// The generalised Gauss rule of a whole line, exact for all cubics that are continuous over the breaks: 3 n/2 + 1/2 points on
/// an odd number n of spans, half a point more on an even one. Johannessen, Computer Methods in Applied Mechanics and
/// Engineering 316 (2017) 84, finds such rules by Newton; for this space there is a closed form on any knots, derived here:
///
/// Simpson's rule (h/6, 4 h/6, h/6) is exact on every other span. It leaves one point there, the middle, and a mass h/6 at
/// either end, which the neighbours take over: theirs is the two-point Gauss rule of the measure dx + the masses at their ends.
/// That measure is positive, so the points lie inside the span and the weights are positive, however the knots are graded.
/// Spans begin and end with two points; where their number is even the last two both have two.
///
/// `per_span` is 0: the number of points differs from span to span.
LineRule patch_rule(const CubicBasis& basis);

}  // namespace swale::verification
