#include "io/study/study_plan.h"

#include <fmt/format.h>

#include <algorithm>
#include <cstdint>
#include <map>
#include <numeric>
#include <random>
#include <stdexcept>
#include <utility>

namespace swale {

namespace {

// A process that is killed loses the chains it was at.
constexpr std::size_t longest_chain = 8;

bool is_tension(const std::string& key) {
    return key == "tension[1].total" || key == "tension[1].elongation";
}

bool has_one_tension(const TomlNode& base) {
    const auto found = std::ranges::find(base.entries, "tension", &TomlEntry::key);
    return found != base.entries.end() && found->value.items.size() == 1;
}

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
    const auto& choices = study_.axes[axis].choices;
    return choices[static_cast<std::size_t>((number - 1) / cases_a_step(axis)) % choices.size()];
}

// Of a grid: as many cases later the axis goes on to its next choice.
int StudyPlan::cases_a_step(std::size_t axis) const {
    int faster = 1;
    for (std::size_t k = axis + 1; k < study_.axes.size(); ++k) faster *= static_cast<int>(study_.axes[k].choices.size());
    return faster;
}

bool StudyPlan::varies_tension_alone(const Axis& axis) const {
    const auto sets_tension = [](const Choice& choice) {
        return choice.settings.size() == 1 && is_tension(choice.settings.front().key);
    };
    return has_one_tension(study_.base) && std::ranges::all_of(axis.choices, sets_tension);
}

// The case with the first choice of tension and everything else as in this one.
int StudyPlan::first_alike(int number) const {
    int first = number;
    for (std::size_t k = 0; study_.sample == 0 && k < study_.axes.size(); ++k) {
        const int step = cases_a_step(k), choices = static_cast<int>(study_.axes[k].choices.size());
        if (varies_tension_alone(study_.axes[k])) first -= (number - 1) / step % choices * step;
    }
    return first;
}

std::vector<std::vector<int>> StudyPlan::chains() const {
    std::vector<std::vector<int>> chains;
    std::map<int, std::size_t> open;  // the chain of a first case that has room
    for (int number = 1; number <= size_; ++number) {
        const auto [at, begun] = open.try_emplace(first_alike(number), chains.size());
        if (!begun && chains[at->second].size() == longest_chain) at->second = chains.size();
        if (at->second == chains.size()) chains.emplace_back();
        chains[at->second].push_back(number);
    }
    return chains;
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
