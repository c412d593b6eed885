#include "io/study/study_plan.h"

#include <fmt/format.h>

#include <cstdint>
#include <numeric>
#include <random>
#include <stdexcept>
#include <utility>

namespace swale {

namespace {

// In [0, 1), the same on every machine: std::uniform_real_distribution is not.
double uniform(std::mt19937_64& engine) {
    return static_cast<double>(engine() >> 11) * 0x1p-53;
}

// One draw from each of `count` equal shares, shuffled (Fisher and Yates).
std::vector<double> latin_shares(int count, int seed, std::size_t axis) {
    std::mt19937_64 engine(static_cast<std::uint64_t>(seed) * 1000003 + axis);
    std::vector<double> shares(count);
    for (int k = 0; k < count; ++k) shares[k] = (k + uniform(engine)) / count;
    for (int k = count - 1; k > 0; --k) std::swap(shares[k], shares[static_cast<int>(uniform(engine) * (k + 1))]);
    return shares;
}

Choice drawn(const Axis& axis, double share) {
    if (!axis.is_range) return axis.choices[static_cast<std::size_t>(share * static_cast<double>(axis.choices.size()))];
    return choice_of(axis, axis.low + share * (axis.high - axis.low));
}

}  // namespace

StudyPlan::StudyPlan(Study study) : study_(std::move(study)) {
    if (study_.sample == 0) {
        for (const Axis& axis : study_.axes) size_ *= static_cast<int>(axis.choices.size());
        return;
    }
    size_ = study_.sample;
    for (std::size_t k = 0; k < study_.axes.size(); ++k) shares_.push_back(latin_shares(size_, study_.seed, k));
}

Choice StudyPlan::choice(std::size_t axis, int number) const {
    if (study_.sample > 0) return drawn(study_.axes[axis], shares_[axis][number - 1]);
    int faster = 1;
    for (std::size_t k = axis + 1; k < study_.axes.size(); ++k) faster *= static_cast<int>(study_.axes[k].choices.size());
    const auto& choices = study_.axes[axis].choices;
    return choices[static_cast<std::size_t>((number - 1) / faster) % choices.size()];
}

PlannedCase StudyPlan::at(int number) const {
    if (number < 1 || number > size_) throw std::out_of_range(fmt::format("the study has no case {}", number));
    PlannedCase planned{number, {}, {}};
    std::vector<CaseSetting> settings;
    for (std::size_t k = 0; k < study_.axes.size(); ++k) {
        const Choice chosen = choice(k, number);
        planned.labels.push_back(chosen.label);
        settings.insert(settings.end(), chosen.settings.begin(), chosen.settings.end());
    }
    try {
        planned.text = variant_text(study_.base, settings, study_.case_file.string());
    } catch (const std::invalid_argument& clash) {  // one axis took away what another sets
        planned.contradiction = clash.what();
    }
    return planned;
}

}  // namespace swale
