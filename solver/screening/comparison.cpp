#include "solver/screening/screening_case.h"

#include <fmt/core.h>

#include <algorithm>
#include <cmath>
#include <numbers>

namespace swale {

namespace {

constexpr double worth_a_word = 0.1;

const StateResult* solved(const std::vector<StateResult>& states, const TensionState* wanted) {
    const auto found = std::ranges::find_if(
        states, [&](const StateResult& s) { return wanted && s.name == wanted->name && s.status == SolveStatus::converged; });
    return found == states.end() ? nullptr : &*found;
}

// Distance over which self-balanced differences of tension fade, W sqrt(A11/A66) / (2 pi); plane stress, derived.
double shear_lag(const ScreeningCase& screening) {
    const Eigen::Matrix3d& A = screening.transition.belt.section.membrane;
    return screening.strips.width * std::sqrt(A(0, 0) / A(2, 2)) / (2 * std::numbers::pi);
}

std::string why_strips_give_more(const ScreeningCase& screening) {
    const double lag = shear_lag(screening);
    if (lag > screening.transition.layout.distance / 2)
        return fmt::format(
            "differences of tension fade over {:.1f} m in this belt, so they spread into the trough beyond, which a "
            "strip held plane at the first set does not",
            lag / 1e3);
    return "the belt bends over the transition nearly without stretch, like a cone, and its strips share what is left";
}

std::string why_strips_give_less(const ScreeningCase& screening) {
    if (screening.strips.lift > 0.02 * screening.strips.wing)
        return "straight strips from a raised pulley would shear the wings; the belt resists that and stretches its edges "
               "instead";
    return "the strain gathers next to the pulley and before the first set, where strips spread it evenly over the distance";
}

constexpr const char* what_linear_wings_do =
    "tension taken as linear over the wings puts more of it between junction and edge, so less is left to both edge and centre";

// Hand methods of one line of the belt whose strain is off, each with its own.
struct Off {
    bool by_strips = false, by_linear_wings = false;
    std::string values;
};

Off those_off(const std::vector<HandMethod>& methods, std::optional<double> HandMethod::*strain, double shell) {
    Off off;
    for (const HandMethod& method : methods) {
        const std::optional<double>& theirs = method.*strain;
        if (!theirs || std::abs(*theirs - shell) <= worth_a_word * std::abs(shell)) continue;
        off.values += fmt::format("{} {:.3g} %, ", method.name, 100 * *theirs);
        (method.name == methods.front().name ? off.by_strips : off.by_linear_wings) = true;
    }
    return off;
}

// For the centre less stretch is more of a difference.
std::string reasons(const ScreeningCase& screening, const Off& off, bool strips_give_more) {
    std::string text;
    if (off.by_strips) text = strips_give_more ? why_strips_give_more(screening) : why_strips_give_less(screening);
    if (off.by_linear_wings) text += std::string(text.empty() ? "" : "; ") + what_linear_wings_do;
    return text;
}

void compare_one(const ScreeningCase& screening, std::optional<double> HandMethod::*strain, double shell,
                 const std::string& state, std::vector<std::string>& said) {
    const std::vector<HandMethod> methods{quadratic_strips(screening), linear_strips(screening), iso_5293(screening)};
    const Off off = those_off(methods, strain, shell);
    if (off.values.empty()) return;
    const bool edge = strain == &HandMethod::edge_strain;
    const double strips = (methods.front().*strain).value_or(shell);
    said.push_back(fmt::format("{} strain in \"{}\": {}shell {:.3g} %: {}", edge ? "edge" : "centre", state, off.values,
                               100 * shell, reasons(screening, off, edge ? strips > shell : strips < shell)));
}

}  // namespace

std::vector<std::string> compare(const TransitionCase& transition, const std::vector<StateResult>& states) {
    const ScreeningCase screening = screening_case(transition);
    std::vector<std::string> said;
    if (const StateResult* state = solved(states, screening.highest))
        compare_one(screening, &HandMethod::edge_strain, state->edge_strain_max.value, state->name, said);
    if (const StateResult* state = solved(states, screening.lowest))
        compare_one(screening, &HandMethod::centre_strain, state->centre_strain_min.value, state->name, said);
    return said;
}

}  // namespace swale
