#include "io/surveyed_set.h"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>
#include <cmath>
#include <numbers>
#include <optional>

namespace swale {
namespace {

constexpr Allowed along_range = {Kind::length, 100, 100000};
constexpr Allowed across_range = {Kind::length, -5000, 5000};
constexpr Allowed height_range = {Kind::length, -1e6, 1e6};

// What measured rolls may differ from drawn ones; beyond it the survey is taken for mistaken.
constexpr double length_tolerance = 10, side_tolerance = 100, along_tolerance = 150;  // [mm]
constexpr double angle_tolerance = 10 * std::numbers::pi / 180;

constexpr double any_underside = 0;  // the drawn rolls are looked at from their contact lines

/// The key of a drawn roll.
std::string key_of(const SetRoll& roll) {
    if (roll.side == 0) return "centre";
    return std::string(roll.side > 0 ? "left_" : "right_") + (roll.name.starts_with("inner") ? "inner" : "wing");
}

Eigen::Vector3d read_end(CaseTable& roll, const std::string& key, double at) {
    CaseTable end = roll.table(key, true);
    const Eigen::Vector3d place(end.quantity("x", along_range).value_or(at) - at, end.required_quantity("y", across_range),
                                end.required_quantity("z", height_range));
    end.finish();
    return place;
}

/// Reads the rolls of one set.
class RollReader {
  public:
    RollReader(CaseTable& table, const TransitionLayout& layout, MeasuredTo measured_to, double at)
        : table_(table), layout_(layout), measured_to_(measured_to), at_(at) {}

    MeasuredRoll read(const SetRoll& drawn, const IdlerSet& set) {
        const std::string key = key_of(drawn);
        CaseTable roll_table = table_.table(key, true);
        MeasuredRoll roll{read_end(roll_table, "right", at_), read_end(roll_table, "left", at_)};
        roll_table.finish();
        sound_ = sound_ && roll.right.allFinite() && roll.left.allFinite() && table_.has(key);
        if (!sound_) return roll;
        check(key, roll, drawn, set);
        if (measured_to_ == MeasuredTo::axis) {
            const Eigen::Vector3d to_shell = layout_.trough.roll_diameter / 2 * directions_of(roll).up;
            roll = {roll.right + to_shell, roll.left + to_shell};
        }
        return roll;
    }

    bool sound() const { return sound_; }

    void reject(const std::string& key, const std::string& problem, const std::string& allowed) {
        table_.reject(key, problem, allowed);
        sound_ = false;
    }

  private:
    void check(const std::string& key, const MeasuredRoll& roll, const SetRoll& drawn, const IdlerSet& set) {
        const Eigen::Vector3d run = roll.left - roll.right,
                              axis = drawn.side < 0 ? Eigen::Vector3d(-drawn.roll.axis) : drawn.roll.axis;
        const double length = 2 * drawn.roll.half_length;
        const double y = (drawn.roll.centre + (measured_to_ == MeasuredTo::shell ? drawn.roll.radius : 0) * drawn.roll.up).y();
        if (run.y() <= 0)
            reject(key, "its left end is not to the left of its right end",
                   "left with the greater y: y is positive to the left");
        else if (std::abs(run.norm() - length) > length_tolerance)
            reject(key, fmt::format("its ends are {:.1f} mm apart, the roll is {:.1f} mm long", run.norm(), length),
                   fmt::format("the roll's length to {} mm", length_tolerance));
        else if (std::acos(std::clamp(run.normalized().dot(axis), -1.0, 1.0)) > angle_tolerance)
            reject(key,
                   fmt::format("it lies at {:.1f} deg across the conveyor, drawn at {:.1f} deg",
                               slope_of(roll) * 180 / std::numbers::pi, std::asin(axis.z()) * 180 / std::numbers::pi),
                   "within 10 deg of the drawn roll");
        else if (std::abs((roll.right + roll.left).y() / 2 - y) > side_tolerance)
            reject(key,
                   fmt::format("its middle lies at y = {:.1f} mm, drawn at {:.1f} mm", (roll.right + roll.left).y() / 2, y),
                   fmt::format("within {} mm of the drawn roll, y from the conveyor's centre line", side_tolerance));
        else if (const double off = (roll.right + roll.left).x() / 2 - (drawn.roll.centre.x() - set.x);
                 std::abs(off) > along_tolerance)
            reject(key, fmt::format("its middle stands {:.1f} mm off its place along the conveyor", off),
                   fmt::format("within {} mm of it", along_tolerance));
    }

    CaseTable& table_;
    const TransitionLayout& layout_;
    MeasuredTo measured_to_;
    double at_;
    bool sound_ = true;
};

/// Rolls that such a set has not.
void check_missing_rolls(CaseTable& table, const std::vector<SetRoll>& drawn, RollReader& reader) {
    for (const char* key : {"centre", "left_inner", "right_inner", "left_wing", "right_wing"}) {
        if (std::ranges::find(drawn, key, key_of) != drawn.end()) continue;
        CaseTable roll = table.table(key, false);
        for (const char* end : {"left", "right"})
            if (roll.has(end)) read_end(roll, end, 0);
        roll.finish();
        if (table.has(key))
            reader.reject(key, fmt::format("a set of {} rolls has no such roll", drawn.size()), "the rolls of trough.rolls");
    }
}

/// From right to left no roll begins before the last one ends, unless it stands in a plane of its own.
void check_overlap(const std::vector<SetRoll>& drawn, const MeasuredSet& set, double diameter, RollReader& reader) {
    std::vector<std::size_t> order(set.rolls.size());
    for (std::size_t k = 0; k < order.size(); ++k) order[k] = k;
    std::ranges::sort(order, {}, [&](std::size_t k) { return drawn[k].roll.centre.y(); });
    for (std::size_t k = 1; k < order.size(); ++k) {
        const MeasuredRoll &before = set.rolls[order[k - 1]], &roll = set.rolls[order[k]];
        const bool apart = std::abs(before.left.x() - roll.right.x()) >= diameter;
        if (!apart && roll.right.y() < before.left.y())
            reader.reject(key_of(drawn[order[k]]),
                          fmt::format("its right end at y = {:.1f} mm overlaps {}, whose left end is at {:.1f} mm",
                                      roll.right.y(), key_of(drawn[order[k - 1]]), before.left.y()),
                          "rolls side by side");
    }
}

}  // namespace

double SurveyedSet::height(double roll_gap) const {
    if (measured.rolls.size() % 2 == 1) return (measured.rolls[0].right + measured.rolls[0].left).z() / 2;
    const MeasuredRoll &left = measured.rolls[0], &right = measured.rolls[1];
    const double rise = roll_gap / 2 * (directions_of(left).axis.z() - directions_of(right).axis.z());
    return (left.right.z() + right.left.z() - rise) / 2;
}

SurveyedSet read_surveyed_set(CaseTable& table, const TransitionLayout& layout, const std::vector<IdlerSet>& drawn,
                              MeasuredTo measured_to) {
    SurveyedSet set;
    set.name = table.required_text("name");
    const auto found = std::ranges::find(drawn, set.name, &IdlerSet::name);
    const bool known = found != drawn.end();
    if (!known && !set.name.empty()) {
        std::vector<std::string> names;
        for (const IdlerSet& one : drawn) names.push_back(one.name);
        table.reject("name", "no such set", fmt::format("{}", fmt::join(names, ", ")));
    }
    const IdlerSet& as_drawn = known ? *found : drawn.back();
    set.at = table.quantity("at", along_range).value_or(as_drawn.x);
    RollReader reader(table, layout, measured_to, set.at);
    const std::vector<SetRoll> rolls = rolls_of(layout, as_drawn, any_underside);
    for (const SetRoll& roll : rolls) set.measured.rolls.push_back(reader.read(roll, as_drawn));
    check_missing_rolls(table, rolls, reader);
    if (reader.sound()) check_overlap(rolls, set.measured, layout.trough.roll_diameter, reader);
    if (as_drawn.support == Support::held)
        reader.reject("name", "a held set has no rolls to measure", "a set with support = \"rolls\"");
    table.finish();
    set.sound = known && reader.sound() && std::isfinite(set.at);
    return set;
}

}  // namespace swale
