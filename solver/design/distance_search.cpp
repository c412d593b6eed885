#include "solver/design/distance_search.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <utility>

namespace swale {

namespace {

constexpr double stride = 1.6;  // farthest that a slope is believed

// A headroom is h0 + b (1/L^2 - 1/L0^2) with b = -dh/dL L0^3/2.
double slope_by_inverse_square(const Headroom& headroom, double distance) {
    return -headroom.slopes.front() * std::pow(distance, 3) / 2;
}

// Where the least headrooms of both would meet zero, if nothing is known but themselves; not nearer to either end than a fifth,
// so that a jump is closed in too.
double false_position(const DistanceTrial& fails, const DistanceTrial& passes) {
    const double low = fails.distance, high = passes.distance;
    if (!fails.trial.solved() || !fails.trial.least() || !passes.trial.least()) return std::sqrt(low * high);
    const double below = fails.trial.least()->share, above = passes.trial.least()->share;
    const double share = std::clamp(-below / (above - below), 0.2, 0.8);
    return 1 / std::sqrt((1 - share) / (low * low) + share / (high * high));
}

bool has_slopes(const Trial& trial) {
    return trial.solved() && trial.least() && !trial.least()->slopes.empty();
}

}  // namespace

double predicted_share(const Headroom& headroom, double distance, double other) {
    if (headroom.slopes.empty()) return headroom.share;
    return headroom.share + slope_by_inverse_square(headroom, distance) * (1 / (other * other) - 1 / (distance * distance));
}

std::optional<double> predicted_root(const DistanceTrial& trial) {
    if (!has_slopes(trial.trial)) return {};
    double inverse_square = std::numeric_limits<double>::infinity();
    for (const Headroom& headroom : trial.trial.headrooms) {
        if (headroom.slopes.empty()) continue;
        const double slope = slope_by_inverse_square(headroom, trial.distance);
        if (slope >= 0) continue;  // it grows as the belt gets shorter
        inverse_square = std::min(inverse_square, 1 / (trial.distance * trial.distance) - headroom.share / slope);
    }
    if (!(inverse_square > 0)) return std::numeric_limits<double>::infinity();
    return 1 / std::sqrt(inverse_square);
}

DistanceSearch::DistanceSearch(double shortest, double longest, double relative)
    : shortest_(std::ceil(shortest)), longest_(std::floor(longest)), relative_(relative) {}

void DistanceSearch::take(DistanceTrial trial) {
    if (has_slopes(trial.trial) || !last_) last_ = trial;
    (trial.trial.passes() ? passes_ : fails_) = std::move(trial);
    // A failure above what passed: it fails from there on down.
    if (passes_ && fails_ && fails_->distance >= passes_->distance) passes_.reset();
}

bool DistanceSearch::closed() const {
    if (passes_ && passes_->distance <= shortest_) return true;
    if (!passes_) return fails_ && fails_->distance >= longest_;
    return fails_ && passes_->distance - fails_->distance <= std::max(1.0, relative_ * fails_->distance);
}

// Inside the bounds, and inside the bracket if there is one.
double DistanceSearch::within(double distance) const {
    double low = shortest_, high = longest_;
    if (fails_) low = std::max(low, fails_->distance + 1);
    if (passes_) high = std::min(high, passes_->distance - 1);
    return std::ceil(std::clamp(distance, std::min(low, high), high));
}

double DistanceSearch::outwards() const {
    return passes_ ? passes_->distance / stride : fails_->distance * stride;
}

std::optional<DistanceGuess> DistanceSearch::next() const {
    if (closed()) return {};
    const double from = last_->distance;
    std::optional<double> root = predicted_root(*last_);
    if (root) root = std::clamp(*root, from / stride, from * stride);
    if (root && passes_ && std::abs(passes_->distance - *root) <= relative_ * *root)
        return DistanceGuess{within(passes_->distance / (1 + 0.9 * relative_)), true};
    const bool believed = root && !(passes_ && *root >= passes_->distance) && !(fails_ && *root <= fails_->distance);
    if (believed) return DistanceGuess{within(*root * (1 + 0.4 * relative_)), false};
    if (passes_ && fails_) return DistanceGuess{within(false_position(*fails_, *passes_)), false};
    return DistanceGuess{within(outwards()), false};
}

}  // namespace swale
