#include "io/report/study/study_counts.h"

#include "io/chart/chart_pictures.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <map>
#include <set>

namespace swale {

namespace {

constexpr std::size_t most_values = 12;
constexpr int shares = 6;

// Equal parts of the range of a drawn number.
std::vector<AxisPart> parts_of_range(const StudyRecord& record, std::size_t axis, const std::vector<std::string>& values) {
    const double low = label_number(values.front()), high = label_number(values.back());
    const std::string unit = axis_words(record.table.axes[axis], values.front()).unit;
    std::vector<AxisPart> parts;
    for (int k = 0; k < shares; ++k)
        parts.push_back({fmt::format("{:.3g} to {:.3g}{}{}", low + (high - low) * k / shares,
                                     low + (high - low) * (k + 1) / shares, unit.empty() ? "" : " ", unit),
                         {}});
    for (std::size_t k = 0; k < record.cases.size(); ++k) {
        const double share = (label_number(record.table.cases[k].labels[axis]) - low) / (high - low);
        parts[static_cast<std::size_t>(std::clamp(static_cast<int>(share * shares), 0, shares - 1))].cases.push_back(k);
    }
    return parts;
}

void count_hand_method(double needed, const ChartedCase& charted, bool within, HandMethodCount& count) {
    if (!std::isfinite(needed)) return;
    const bool enough = needed <= charted.row.distance;
    ++(enough ? within ? count.right_enough : count.unsafe : within ? count.wasteful : count.right_short);
}

}  // namespace

bool numbers_of_one_unit(const std::vector<std::string>& labels) {
    return std::ranges::all_of(labels, [&](const std::string& label) {
        return std::isfinite(label_number(label)) && label_unit(label) == label_unit(labels.front());
    });
}

CaseList all_cases(const StudyRecord& record) {
    CaseList cases(record.cases.size());
    for (std::size_t k = 0; k < cases.size(); ++k) cases[k] = k;
    return cases;
}

OutcomeCounts count_outcomes(const StudyRecord& record, const CaseList& cases) {
    OutcomeCounts counts;
    for (const std::size_t k : cases) {
        const CaseOutcome outcome = record.cases[k].outcome;
        ++(outcome == CaseOutcome::within          ? counts.within
           : outcome == CaseOutcome::over          ? counts.over
           : outcome == CaseOutcome::not_converged ? counts.not_converged
                                                   : counts.not_solved);
    }
    return counts;
}

std::vector<std::string> axis_values(const StudyRecord& record, std::size_t axis) {
    std::vector<std::string> values;
    std::set<std::string> seen;
    for (const ChartedCase& charted : record.table.cases)
        if (seen.insert(charted.labels[axis]).second) values.push_back(charted.labels[axis]);
    if (numbers_of_one_unit(values)) std::ranges::stable_sort(values, {}, label_number);
    return values;
}

std::vector<AxisPart> axis_parts(const StudyRecord& record, std::size_t axis) {
    const std::vector<std::string> values = axis_values(record, axis);
    if (values.size() > most_values && numbers_of_one_unit(values)) return parts_of_range(record, axis, values);
    std::vector<AxisPart> parts;
    std::map<std::string, std::size_t> places;
    for (const std::string& value : values) {
        const std::size_t place = std::min(parts.size(), most_values);
        places[value] = place;
        if (place == parts.size())
            parts.push_back({place < most_values ? label_words(record.table.axes[axis], value) : "all further values", {}});
    }
    for (std::size_t k = 0; k < record.cases.size(); ++k)
        parts[places.at(record.table.cases[k].labels[axis])].cases.push_back(k);
    return parts;
}

std::string binding_limit(const ChartedCase& charted) {
    const auto least = charted.row.least();
    return least == charted.row.left.end() ? "" : least->first;
}

double share_used(const ChartedCase& charted) {
    const auto least = charted.row.least();
    return least == charted.row.left.end() ? NAN : 1 - least->second;
}

std::vector<BindingCount> binding_limits(const StudyRecord& record, const CaseList& cases) {
    std::map<std::string, int> counts;
    for (const std::size_t k : cases)
        if (record.cases[k].solved() && !binding_limit(record.table.cases[k]).empty())
            ++counts[binding_limit(record.table.cases[k])];
    std::vector<BindingCount> sorted;
    for (const auto& [limit, count] : counts) sorted.push_back({limit, count});
    std::ranges::stable_sort(sorted, std::greater(), &BindingCount::count);
    return sorted;
}

std::vector<HandMethodCount> count_hand_methods(const StudyRecord& record) {
    std::vector<HandMethodCount> counts;
    for (const std::string& method : record.table.hand_methods) {
        HandMethodCount count{method};
        for (std::size_t k = 0; k < record.cases.size(); ++k) {
            const auto found = record.table.cases[k].hand_methods.find(method);
            if (record.cases[k].solved() && found != record.table.cases[k].hand_methods.end())
                count_hand_method(found->second, record.table.cases[k], record.cases[k].outcome == CaseOutcome::within, count);
        }
        if (count.all() > 0) counts.push_back(count);
    }
    return counts;
}

}  // namespace swale
