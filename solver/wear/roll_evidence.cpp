#include "solver/wear/roll_evidence.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace swale {

namespace {

// Assumptions on readings, all alike likely. Noise of the root of a depth as a share of the roots' root mean square; exposure
// from which a place is marked as worn; share of marks that are wrong.
constexpr double noises[] = {0.06, 0.12, 0.22, 0.4};
// On a young roll only what is pressed more than evenly has lost its paint.
constexpr struct { double exposure, weight; } thresholds[] = {{0.08, 0.25}, {0.2, 0.25}, {0.45, 0.25}, {1, 0.15}, {2, 0.1}};
constexpr double misreadings[] = {0.03, 0.12};
constexpr double least_exposure = 0.02;

// Without a pattern: a depth's root strays by so much of the roots' root mean square.
constexpr double stray = 0.5;

constexpr double in_the_middle = 0.04;  // of the width

double normal_distribution(double x) {
    return 0.5 * std::erfc(-x / std::numbers::sqrt2);
}

// Weights of which all add up to `share`.
std::vector<Placement> weighing(double share, std::vector<Placement> placements) {
    std::vector<double> logs;
    for (const Placement& placement : placements) logs.push_back(placement.log_weight);
    const double sum = log_sum(logs);
    for (Placement& placement : placements) placement.log_weight += std::log(share) - sum;
    return placements;
}

std::vector<Placement> both(std::vector<Placement> first, const std::vector<Placement>& second) {
    first.insert(first.end(), second.begin(), second.end());
    return first;
}

std::vector<double> steps(double from, double to, int count) {
    std::vector<double> values;
    for (int k = 0; k < count; ++k) values.push_back(count == 1 ? from : from + (to - from) * k / (count - 1));
    return values;
}

std::vector<Placement> all_of(const std::vector<double>& offsets, const std::vector<double>& tilts) {
    std::vector<Placement> placements;
    for (const double offset : offsets)
        for (const double tilt : tilts)
            for (int wander = 0; wander < wander_count; ++wander) placements.push_back({offset, tilt, wander, 0});
    return placements;
}

// N(r; m p, s^2 I) integrated over m > 0 with the prior 2 N(m; 0, t^2).
double log_amplitude_evidence(double pp, double pr, double rr, int count, double s, double t) {
    const double precision = pp / (s * s) + 1 / (t * t), mean = pr / (s * s) / precision;
    return -0.5 * rr / (s * s) - count * std::log(s * std::sqrt(2 * std::numbers::pi)) + 0.5 * mean * mean * precision -
           0.5 * std::log(precision * t * t) + std::log(2 * normal_distribution(mean * std::sqrt(precision)) + 1e-300);
}

}  // namespace

double log_sum(const std::vector<double>& terms) {
    const double largest = *std::max_element(terms.begin(), terms.end());
    double sum = 0;
    for (const double term : terms) sum += std::exp(term - largest);
    return largest + std::log(sum);
}

PlacementPriors placement_priors(const WearSurvey& survey) {
    const double near = in_the_middle * survey.run.width;
    const double most = std::max(1.5 * near, (survey.roll_length - survey.run.width) / 2 + 0.02 * survey.run.width);
    const int far_steps = std::max(2, static_cast<int>(std::ceil((most - near) / 18)));
    std::vector<double> off = steps(-most, -near, far_steps);
    for (const double offset : steps(near, most, far_steps)) off.push_back(offset);
    const std::vector<double> middle = steps(-near, near, 1 + static_cast<int>(std::lround(2 * in_the_middle / offset_step)));
    const std::vector<double> level{-0.2, 0, 0.2}, tilted{-0.7, -0.4, 0.4, 0.7};
    const std::vector<Placement> in_middle = all_of(middle, level);
    PlacementPriors priors;
    priors.centred = weighing(1, in_middle);
    priors.usual = both(weighing(0.7, in_middle), weighing(0.3, all_of(off, level)));
    priors.off = both(weighing(0.75, all_of(off, {-0.4, -0.2, 0, 0.2, 0.4})), weighing(0.25, all_of(middle, tilted)));
    const double in_middle_share = survey.rolls.size() > 1 ? mistracked_in_middle : 0;
    priors.mistracked = weighing(1 - in_middle_share, priors.off);
    if (in_middle_share > 0) priors.mistracked = both(priors.mistracked, weighing(in_middle_share, in_middle));
    return priors;
}

double exposure_on_roll(const Exposure& exposure, const Placement& placement, double width, double y) {
    const double on_belt = y - placement.offset;
    return exposure.at(on_belt) * std::max(0.0, 1 + placement.tilt * 2 * on_belt / width);
}

RollLikelihood::RollLikelihood(const SurveyedRoll& roll, double width) : width_(width) {
    for (const DepthReading& reading : roll.depths) {
        place_.push_back(reading.y);
        root_.push_back(std::sqrt(reading.depth));
        sum_of_squares_ += reading.depth;
    }
    if (!root_.empty()) scale_ = std::sqrt(sum_of_squares_ / static_cast<double>(root_.size()));
    if (scale_ == 0) place_.clear(), root_.clear();  // a roll without any wear says nothing
    for (const MarkedBand& band : roll.bands)
        if (band.mark != Mark::unsure) bands_.push_back(band);
}

std::vector<double> RollLikelihood::predicted_roots(const Exposure& exposure, const Placement& placement) const {
    std::vector<double> roots;
    for (const double y : place_) roots.push_back(std::sqrt(exposure_on_roll(exposure, placement, width_, y)));
    return roots;
}

// sqrt(depth) = sqrt(wear per exposure) sqrt(exposure) + noise: of one size where much and where little is worn.
double RollLikelihood::depths(const std::vector<double>& predicted) const {
    if (root_.empty()) return 0;
    double pp = 0, pr = 0;
    for (std::size_t k = 0; k < root_.size(); ++k) {
        pp += predicted[k] * predicted[k];
        pr += predicted[k] * root_[k];
    }
    std::vector<double> terms;
    for (const double noise : noises)
        terms.push_back(
            log_amplitude_evidence(pp, pr, sum_of_squares_, static_cast<int>(root_.size()), noise * scale_, 2 * scale_));
    return log_sum(terms) - std::log(std::size(noises));
}

// A place is marked as worn with the probability 1/(1 + (threshold/exposure)^n), a wrong mark now and then.
double RollLikelihood::bands(const Exposure& exposure, const Placement& placement) const {
    if (bands_.empty()) return 0;
    double product[std::size(thresholds)][std::size(misreadings)];
    for (auto& row : product) std::fill(std::begin(row), std::end(row), 1.0);
    for (const MarkedBand& band : bands_) {
        const double middle = (band.from + band.to) / 2 - placement.offset;
        const double even = exposure.over(band.from - placement.offset, band.to - placement.offset);
        const double here = even * std::max(0.0, 1 + placement.tilt * 2 * middle / width_) + least_exposure;
        const double power = here * here * here;
        for (std::size_t t = 0; t < std::size(thresholds); ++t) {
            const double worn = power / (power + std::pow(thresholds[t].exposure, 3));
            for (std::size_t m = 0; m < std::size(misreadings); ++m) {
                const double marked = misreadings[m] + (1 - 2 * misreadings[m]) * worn;
                product[t][m] *= band.mark == Mark::contact ? marked : 1 - marked;
            }
        }
    }
    double sum = 0;
    for (std::size_t t = 0; t < std::size(thresholds); ++t)
        for (const double entry : product[t]) sum += thresholds[t].weight * entry;
    return std::log(sum / static_cast<double>(std::size(misreadings)) + 1e-300);
}

double RollLikelihood::log_likelihood(const Exposure& exposure, const Placement& placement) const {
    return depths(predicted_roots(exposure, placement)) + bands(exposure, placement);
}

double RollLikelihood::log_likelihood_of_other() const {
    double sum = -static_cast<double>(bands_.size()) * std::numbers::ln2;
    if (!root_.empty()) {
        double mean = 0;
        for (const double root : root_) mean += root;
        const int count = static_cast<int>(root_.size());
        sum += log_amplitude_evidence(count, mean, sum_of_squares_, count, stray * scale_, 2 * scale_);
    }
    return sum;
}

double RollLikelihood::depth_per_exposure(const Exposure& exposure, const Placement& placement) const {
    if (root_.empty()) return 0;
    const std::vector<double> predicted = predicted_roots(exposure, placement);
    double pp = 0, pr = 0;
    for (std::size_t k = 0; k < root_.size(); ++k) {
        pp += predicted[k] * predicted[k];
        pr += predicted[k] * root_[k];
    }
    return pp > 0 ? std::pow(pr / pp, 2) : 0;
}

}  // namespace swale
