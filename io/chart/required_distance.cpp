#include "io/chart/required_distance.h"

#include "io/chart/monotone_curve.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <set>

namespace swale {

namespace {

using Rows = std::vector<DistanceRow>;

/// Distances in which all criteria pass, and which of them end it; an end without a name is the end of the rows.
struct Passing {
    double from = 0, to = 0;
    std::string from_binding, to_binding;

    bool empty() const { return !(from <= to); }
};

/// Solved rows next to each other.
std::vector<Rows> runs_of(const Rows& rows) {
    std::vector<Rows> runs(1);
    for (const DistanceRow& row : rows)
        if (row.solved())
            runs.back().push_back(row);
        else if (!runs.back().empty())
            runs.emplace_back();
    std::erase_if(runs, [](const Rows& run) { return run.size() < 2; });
    return runs;
}

double inverse_square(double distance) {
    return 1 / (distance * distance);
}

// Of a criterion over the rows of a run; 1/L^2 rises from the last row to the first. Absent where it is not judged all along.
std::optional<MonotoneCurve> curve_of(const Rows& run, const std::string& criterion) {
    std::vector<double> x, y;
    for (auto row = run.rbegin(); row != run.rend(); ++row) {
        const auto found = row->left.find(criterion);
        if (found == row->left.end()) return {};
        x.push_back(inverse_square(row->distance));
        y.push_back(found->second);
    }
    return MonotoneCurve(x, y);
}

// Where the curve is zero between two rows of which one passes, by halving 1/L^2.
double crossing(const MonotoneCurve& curve, std::size_t piece, double near, double far) {
    double low = inverse_square(far), high = inverse_square(near);
    const bool passes_low = curve.value(piece, low) >= 0;
    for (int k = 0; k < 60; ++k) {
        const double middle = (low + high) / 2;
        ((curve.value(piece, middle) >= 0) == passes_low ? low : high) = middle;
    }
    return std::clamp(1 / std::sqrt((low + high) / 2), near, far);
}

// Takes off what a criterion does not pass of the stretch between two rows.
void narrow(Passing& stretch, const std::string& criterion, const MonotoneCurve& curve, std::size_t piece,
            const DistanceRow& near, const DistanceRow& far) {
    const bool near_passes = near.left.at(criterion) >= 0, far_passes = far.left.at(criterion) >= 0;
    if (near_passes && far_passes) return;
    if (near_passes == far_passes) {
        stretch.from = INFINITY;
        return;
    }
    const double at = crossing(curve, piece, near.distance, far.distance);
    if (!near_passes && at > stretch.from) stretch.from = at, stretch.from_binding = criterion;
    if (!far_passes && at < stretch.to) stretch.to = at, stretch.to_binding = criterion;
}

std::set<std::string> criteria_of(const Rows& run) {
    std::set<std::string> names;
    for (const DistanceRow& row : run)
        for (const auto& [name, left] : row.left) names.insert(name);
    return names;
}

std::vector<Passing> stretches_of(const Rows& run) {
    std::map<std::string, MonotoneCurve> curves;
    for (const std::string& name : criteria_of(run))
        if (auto curve = curve_of(run, name)) curves.emplace(name, *std::move(curve));
    std::vector<Passing> stretches;
    for (std::size_t k = 0; k + 1 < run.size(); ++k) {
        Passing piece{run[k].distance, run[k + 1].distance, "", ""};
        for (const auto& [name, curve] : curves) narrow(piece, name, curve, run.size() - 2 - k, run[k], run[k + 1]);
        if (piece.empty()) continue;
        const bool goes_on = !stretches.empty() && stretches.back().to == piece.from && piece.from_binding.empty();
        if (goes_on)
            stretches.back().to = piece.to, stretches.back().to_binding = piece.to_binding;
        else
            stretches.push_back(piece);
    }
    return stretches;
}

// "0.75 widths", and of which row it is.
std::string widths(double distance, double width) {
    return fmt::format("{:.4g} widths", distance / width);
}

std::string unsolved(const Rows& rows, double width) {
    std::string list;
    for (const DistanceRow& row : rows)
        if (!row.solved()) list += (list.empty() ? "" : ", ") + widths(row.distance, width) + ": " + row.why_none;
    return list.empty() ? "" : "; not bridged: " + list;
}

std::string why_nowhere(const Rows& rows, double width) {
    const auto nearest = std::ranges::max_element(rows, {}, [](const DistanceRow& row) {
        return row.solved() && row.least() != row.left.end() ? row.least()->second : -INFINITY;
    });
    if (nearest == rows.end() || !nearest->solved() || nearest->least() == nearest->left.end())
        return "no distance could be judged";
    return fmt::format("no two neighbours pass; nearest to it {} at {}", nearest->least()->first,
                       widths(nearest->distance, width));
}

}  // namespace

std::map<std::string, double>::const_iterator DistanceRow::least() const {
    return std::ranges::min_element(left, {}, &std::pair<const std::string, double>::second);
}

RequiredDistance required_distance(Rows rows, double width) {
    std::ranges::sort(rows, {}, &DistanceRow::distance);
    std::vector<Passing> stretches;
    for (const Rows& run : runs_of(rows))
        for (const Passing& stretch : stretches_of(run)) stretches.push_back(stretch);
    RequiredDistance required;
    const auto longest = std::ranges::max_element(stretches, {}, [](const Passing& p) { return p.to - p.from; });
    if (longest == stretches.end()) {
        required.remark = why_nowhere(rows, width) + unsolved(rows, width);
        return required;
    }
    required.binding = longest->from_binding;
    if (longest->from_binding.empty())
        required.remark = fmt::format("passes at {} already, below it no row was solved", widths(longest->from, width));
    else
        required.distance = longest->from;
    if (!longest->to_binding.empty()) required.until = longest->to;
    required.until_binding = longest->to_binding;
    required.remark += unsolved(rows, width);
    if (required.remark.starts_with("; ")) required.remark.erase(0, 2);
    return required;
}

std::optional<double> left_at(const Rows& rows, const std::string& criterion, double distance) {
    for (const Rows& run : runs_of(rows)) {
        const auto curve = curve_of(run, criterion);
        for (std::size_t k = 0; curve && k + 1 < run.size(); ++k)
            if (run[k].distance <= distance && distance <= run[k + 1].distance)
                return curve->value(run.size() - 2 - k, inverse_square(distance));
    }
    return {};
}

}  // namespace swale
