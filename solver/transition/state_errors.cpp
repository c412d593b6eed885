#include "solver/transition/state_errors.h"

#include "solver/criteria/criteria.h"

#include <algorithm>
#include <cmath>

namespace swale {

namespace {

void add(double difference, std::optional<double>& error) {
    error = error.value_or(0) + std::abs(difference);
}

void add_support(const std::vector<SupportForce>& one, const std::vector<SupportForce>& other, SupportForce& support) {
    const auto in_one = std::ranges::find(one, support.name, &SupportForce::name);
    const auto in_other = std::ranges::find(other, support.name, &SupportForce::name);
    if (in_one == one.end() || in_other == other.end()) return;
    add((in_one->force - in_other->force).norm(), support.force_error);
    if (in_one->lift_off && in_other->lift_off) add(*in_one->lift_off - *in_other->lift_off, support.lift_off_error);
}

}  // namespace

void add_differences(const TransitionCase& transition, const TensionState& state, const StateResult& one,
                     const StateResult& other, StateResult& result) {
    add(one.far_strain - other.far_strain, result.far_strain_error);
    for (SupportForce& support : result.supports) add_support(one.supports, other.supports, support);
    const std::vector<Judgement> of_one = judge_state(transition, state, one), of_other = judge_state(transition, state, other);
    for (std::size_t k = 0; k < of_one.size(); ++k)
        if (of_one[k].value && of_other[k].value)
            result.criterion_errors[of_one[k].name] += std::abs(*of_one[k].value - *of_other[k].value);
}

}  // namespace swale
