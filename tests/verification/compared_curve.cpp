#include "tests/verification/compared_curve.h"

#include <algorithm>

namespace swale::verification {

ComparedCurve::ComparedCurve(const std::string& picture, const std::string& name, const std::string& x_label,
                             const std::string& y_label)
    : reference_{picture, name + ", reference", x_label, y_label, {}, true, true}, ours_{picture, name,  x_label, y_label,
                                                                                         {},      false, true} {}

void ComparedCurve::add(double at, double expected, double measured) {
    reference_.points.emplace_back(at, expected);
    ours_.points.emplace_back(at, measured);
}

void ComparedCurve::draw_both() const {
    draw(reference_);
    Curve ours = ours_;
    std::sort(ours.points.begin(), ours.points.end());
    draw(ours);
}

}  // namespace swale::verification
