#include "solver/screening/straight_strips.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <vector>

namespace swale {

namespace {

/// Strips on one roll.
struct Piece {
    double length, angle;
    double p = 0, q = 0;  ///< further in and higher at its inner end than in the flat belt

    double end_p() const { return p + length * (1 - std::cos(angle)); }
    double end_q() const { return q + length * std::sin(angle); }

    double excess(double t, double lift) const {
        const double c = 1 - std::cos(angle), s = std::sin(angle);
        return t * t * c + t * (p * c + q * s) + (p * p + q * q) / 2 - q * lift - t * lift * s;
    }

    // d excess / dt = 0 at t = ((lift - q) / tan(a/2) - p) / 2.
    double slackest(double lift) const {
        return angle > 0 ? std::clamp((lift - q - p * std::tan(angle / 2)) / (2 * std::tan(angle / 2)), 0.0, length) : 0;
    }

    double integral(double lift) const {
        const double c = 1 - std::cos(angle), s = std::sin(angle), square = length * length / 2;
        return length * length * length / 3 * c + square * (p * c + q * s) + length * ((p * p + q * q) / 2 - q * lift) -
               square * lift * s;
    }
};

std::vector<Piece> pieces(const StraightStrips& strips) {
    const Piece inner{strips.inner_wing, strips.inner_angle};
    return {inner, {strips.wing, strips.angle, inner.end_p(), inner.end_q()}};
}

}  // namespace

double StraightStrips::excess(double y) const {
    const std::vector<Piece> both = pieces(*this);
    return y < inner_wing ? both[0].excess(y, lift) : both[1].excess(y - inner_wing, lift);
}

double StraightStrips::slackest() const {
    const std::vector<Piece> both = pieces(*this);
    const std::array<double, 5> places{0, both[0].slackest(lift), inner_wing, inner_wing + both[1].slackest(lift),
                                       inner_wing + wing};
    return *std::ranges::min_element(places, {}, [&](double y) { return excess(y); });
}

double StraightStrips::mean() const {
    // 2/W times the integral of the excess over one side.
    const std::vector<Piece> both = pieces(*this);
    return 2 * (both[0].integral(lift) + both[1].integral(lift)) / width;
}

double StraightStrips::neutral_lift() const {
    if (inner_wing == 0) return wing * std::tan(angle / 2);
    // The edge lies p further in and q higher: excess (p^2 + q^2)/2 - q lift.
    const Piece outer = pieces(*this)[1];
    return (outer.end_p() * outer.end_p() + outer.end_q() * outer.end_q()) / (2 * outer.end_q());
}

StraightStrips straight_strips(const TransitionLayout& layout) {
    const std::vector<Facet> facets = layout.facets();
    const Facet wing = facets.back();
    StraightStrips strips{layout.belt_width, wing.end - wing.begin, wing.angle, layout.pulley.lift};
    if (layout.trough.rolls == 5) {
        strips.inner_wing = wing.begin - layout.junction();
        strips.inner_angle = layout.trough.inner_angle;
    }
    return strips;
}

}  // namespace swale
