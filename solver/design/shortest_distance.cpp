#include "solver/sizing.h"

#include <fmt/core.h>

#include <algorithm>
#include <cmath>
#include <limits>

namespace swale {

namespace {

constexpr int most_trials = 40;
constexpr double nothing_left = -1;  // headroom of what has no solution

// Share of the limit left between value and limit with the error taken off; for a lower limit, which may be zero, of the
// largest edge tension.
double headroom_of(const Judgement& judgement, double edge_tension) {
    const double error = judgement.error.value_or(0);
    if (judgement.at_least) return (*judgement.value - error - *judgement.limit) / edge_tension;
    return (*judgement.limit - *judgement.value - error) / std::max(std::abs(*judgement.limit), 1e-12);
}

double largest_edge_tension(const TransitionResult& result) {
    double largest = 0;
    for (const StateResult& state : result.states) largest = std::max(largest, std::abs(state.edge_tension_max.value));
    return largest;
}

// The excess of straight strips goes with 1/L^2, so the headroom is nearly linear in that: false position, a little to the
// other side of what was tried last, so that the root is soon closed in from both sides. By halves where there is no headroom
// to go by.
double between(const SizingStep& fails, const SizingStep& passes, double relative, bool last_passed) {
    const double low = fails.distance, high = passes.distance;
    if (fails.headroom <= nothing_left || !std::isfinite(passes.headroom)) return std::sqrt(low * high);
    const double share = -fails.headroom / (passes.headroom - fails.headroom);
    const double root = 1 / std::sqrt((1 - share) / (low * low) + share / (high * high));
    const double beyond = root * (last_passed ? 1 - 0.4 * relative : 1 + 0.4 * relative);
    return std::clamp(beyond, low + 0.05 * (high - low), high - 0.05 * (high - low));
}

}  // namespace

SizingStep sizing_step(double distance, const TransitionResult& result) {
    for (const StateResult& state : result.states)
        if (state.status != SolveStatus::converged)
            return {distance, false, nothing_left, fmt::format("\"{}\" has no solution: {}", state.name, state.reason)};
    SizingStep step{distance, true, std::numeric_limits<double>::infinity(), "no criterion is judged"};
    const double edge_tension = largest_edge_tension(result);
    for (const Judgement& judgement : result.criteria) {
        if (!judgement.passed || !judgement.value || !judgement.limit) continue;
        const double headroom = headroom_of(judgement, edge_tension);
        if (headroom >= step.headroom) continue;
        step.headroom = headroom;
        step.binding = fmt::format("{} in \"{}\"", judgement.name, judgement.state);
    }
    step.passed = step.headroom >= 0;
    return step;
}

const SizingStep& Sizing::step_at(double at) const {
    return *std::ranges::find(steps, at, &SizingStep::distance);
}

namespace {

// Distances tried so far and the bracket that they leave.
class Search {
  public:
    Search(const SizingBounds& bounds, const DistanceTrial& trial) : bounds_(bounds), trial_(trial) {
        bounds_.shortest = std::ceil(bounds.shortest);
        bounds_.longest = std::floor(bounds.longest);
    }

    // From the start outwards until one distance passes and a shorter one fails, or a bound is met.
    void bracket() {
        try_at(std::clamp(bounds_.start, bounds_.shortest, bounds_.longest));
        while (passes_ && !fails_ && passes_->distance > bounds_.shortest)
            try_at(std::max(bounds_.shortest, passes_->distance / stride));
        while (fails_ && !passes_ && fails_->distance < bounds_.longest)
            try_at(std::min(bounds_.longest, fails_->distance * stride));
    }

    void close_in() {
        while (passes_ && fails_ && wide() && steps.size() < most_trials)
            try_at(between(*fails_, *passes_, bounds_.relative, steps.back().passed));
    }

    const std::optional<SizingStep>& shortest_that_passes() const { return passes_; }

    std::vector<SizingStep> steps;

  private:
    static constexpr double stride = 1.5;

    bool wide() const { return passes_->distance - fails_->distance > std::max(1.0, bounds_.relative * fails_->distance); }

    void try_at(double distance) {
        const SizingStep& step = steps.emplace_back(trial_(std::ceil(distance)));
        (step.passed ? passes_ : fails_) = step;
    }

    SizingBounds bounds_;  // in whole mm
    const DistanceTrial& trial_;
    std::optional<SizingStep> passes_, fails_;
};

}  // namespace

Sizing shortest_distance(const SizingBounds& bounds, const DistanceTrial& trial) {
    Search search(bounds, trial);
    search.bracket();
    search.close_in();
    Sizing sizing{{}, search.steps, ""};
    const auto& found = search.shortest_that_passes();
    if (!found) {
        sizing.reason = fmt::format("even at {:.0f} mm {} stands in the way", bounds.longest, search.steps.back().binding);
        return sizing;
    }
    sizing.distance = found->distance;
    sizing.reason = found->distance <= std::ceil(bounds.shortest) ? "the shortest that was allowed" : found->binding + " binds";
    return sizing;
}

}  // namespace swale
