#include "tests/verification/patch_rule.h"

#include <cmath>

namespace swale::verification {

namespace {

/// Which spans have one point, and their length.
struct Spans {
    const CubicBasis& basis;

    bool inside(int s) const { return s >= 0 && s < basis.spans(); }
    bool one_point(int s) const { return inside(s) && s % 2 == 1 && s + 1 < basis.spans(); }
    double length(int s) const { return basis.breaks()[s + 1] - basis.breaks()[s]; }
    double middle(int s) const { return (basis.breaks()[s] + basis.breaks()[s + 1]) / 2; }
    /// That Simpson's rule leaves at the end of a span with one point.
    double mass(int s) const { return one_point(s) ? length(s) / 6 : 0; }
};

// Two-point Gauss rule of the measure dx + before delta(begin) + after delta(end). With t from -1 to 1 its moments are
//   m0 = h + p + q,  m1 = m3 = q - p,  m2 = h/3 + p + q;
// nodes: roots of t^2 + a t + b, orthogonal to 1 and t; weights w1 = (m1 - m0 t2)/(t1 - t2) and the other way round.
void add_two_points(const Spans& spans, int s, LineRule& rule) {
    const double h = spans.length(s), p = spans.mass(s - 1), q = spans.mass(s + 1);
    const double m0 = h + p + q, m1 = q - p, m2 = h / 3 + p + q;
    const double determinant = m0 * m2 - m1 * m1;
    const double a = m1 * (m2 - m0) / determinant, b = (m1 * m1 - m2 * m2) / determinant;
    const double root = std::sqrt(a * a / 4 - b), first = -a / 2 - root, second = -a / 2 + root;
    const auto add = [&](double t, double weight) {
        const double x = spans.middle(s) + h / 2 * t;
        rule.points.push_back({x, weight, spans.basis.at(x, s)});
    };
    add(first, (m1 - m0 * second) / (first - second));
    add(second, (m1 - m0 * first) / (second - first));
}

void add_one_point(const Spans& spans, int s, LineRule& rule) {
    rule.points.push_back({spans.middle(s), spans.length(s) * 2 / 3, spans.basis.at(spans.middle(s), s)});
}

}  // namespace

LineRule patch_rule(const CubicBasis& basis) {
    LineRule rule;
    const Spans spans{basis};
    for (int s = 0; s < basis.spans(); ++s) spans.one_point(s) ? add_one_point(spans, s, rule) : add_two_points(spans, s, rule);
    return rule;
}

}  // namespace swale::verification
