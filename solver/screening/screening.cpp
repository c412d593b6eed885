#include "solver/screening.h"

#include "solver/screening/screening_case.h"

namespace swale {

namespace {

/// In the order of the report: one more is one file and one line here.
constexpr HandMethod (*methods[])(const ScreeningCase&) = {
    iso_5293, base_length, din_22101, quadratic_strips, linear_strips, handbook_multiple, practice_of_widths};

}  // namespace

Screening screen(const TransitionCase& transition) {
    const ScreeningCase screening = screening_case(transition);
    Screening answer;
    for (const auto method : methods) answer.methods.push_back(method(screening));
    if (transition.layout.trough.angle > 0) answer.neutral_lift = screening.strips.neutral_lift();
    answer.practice = idler_practice(screening);
    for (const std::string& rule : troughability_practice(screening)) answer.practice.push_back(rule);
    return answer;
}

}  // namespace swale
