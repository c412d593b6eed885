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

void compare_one(const ScreeningCase& screening, const char* line, const std::optional<double>& strips, double shell,
                 const std::string& state, std::vector<std::string>& said) {
    if (!strips || std::abs(*strips - shell) <= worth_a_word * std::abs(shell)) return;
    const bool edge = std::string(line) == "edge";
    // Less stretch of the centre is more of a difference.
    const bool more = edge ? *strips > shell : *strips < shell;
    said.push_back(fmt::format("{} strain in \"{}\": straight strips {:.3g} %, shell {:.3g} %: {}", line, state, 100 * *strips,
                               100 * shell, more ? why_strips_give_more(screening) : why_strips_give_less(screening)));
}

}  // namespace

std::vector<std::string> compare(const TransitionCase& transition, const std::vector<StateResult>& states) {
    const ScreeningCase screening = screening_case(transition);
    const HandMethod strips = quadratic_strips(screening);
    std::vector<std::string> said;
    if (const StateResult* state = solved(states, screening.highest))
        compare_one(screening, "edge", strips.edge_strain, state->edge_strain_max.value, state->name, said);
    if (const StateResult* state = solved(states, screening.lowest))
        compare_one(screening, "centre", strips.centre_strain, state->centre_strain_min.value, state->name, said);
    return said;
}

}  // namespace swale
