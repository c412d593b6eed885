#include "io/survey_table.h"

#include "io/pulley_table.h"
#include "io/surveyed_set.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <memory>
#include <string>
#include <utility>
#include <vector>

namespace swale {
namespace {

constexpr Allowed height_range = {Kind::length, -1e6, 1e6};
constexpr double height_tolerance = 300;  // of a set from its drawn height [mm]
constexpr int most_full_sets = 10;

bool is_full(const SurveyedSet& set) {
    return set.name.starts_with("set ");
}

// Counted from 0 in the layout.
int number_of(const SurveyedSet& set) {
    return std::stoi(set.name.substr(set.name.rfind(' ') + 1)) - 1;
}

/// The survey's sets that are without mistakes, if all are.
std::optional<std::vector<SurveyedSet>> read_sets(CaseTable& table, const TransitionLayout& drawn, MeasuredTo measured_to) {
    std::vector<SurveyedSet> sets;
    bool sound = true;
    for (CaseTable& one : table.tables("set")) {
        SurveyedSet set = read_surveyed_set(one, drawn, idler_sets(drawn, most_full_sets), measured_to);
        const bool again = std::ranges::find(sets, set.name, &SurveyedSet::name) != sets.end();
        if (again && !set.name.empty()) one.reject("name", "this set is measured twice", "each set once");
        sound = sound && set.sound && !again;
        sets.push_back(std::move(set));
    }
    if (sets.empty()) table.reject_missing("set", "one [[survey.set]] or more");
    if (!sound || sets.empty()) return {};
    return sets;
}

/// Height in the survey's datum of the line of the full sets' centre rolls: as given, or that of the last full set measured.
std::optional<double> read_level(CaseTable& table, const std::vector<SurveyedSet>& sets, const Trough& trough) {
    if (const std::optional<double> level = table.quantity("level", height_range)) return level;
    const SurveyedSet* last = nullptr;
    for (const SurveyedSet& set : sets)
        if (is_full(set) && (!last || number_of(set) > number_of(*last))) last = &set;
    if (last) return last->height(trough.roll_gap);
    table.reject_missing("level",
                         "the height of the full sets' centre rolls in the survey's datum, where no full set is measured");
    return {};
}

/// Puts measured sets into a layout as it was drawn.
class Placing {
  public:
    Placing(const TransitionLayout& drawn, double level) : layout_(drawn), level_(level) {
        for (Station& station : layout_.stations) station.lift = drawn.lift_of(station);  // it stays where it is
    }

    void pulley(double top) { layout_.pulley.lift = top - level_; }

    void place(const std::vector<SurveyedSet>& sets) {
        for (const SurveyedSet& set : sets)
            if (set.name == "set 1") layout_.distance = set.at;
        for (const SurveyedSet& set : sets)
            if (is_full(set))
                full_set(set);
            else
                station(set);
    }

    const TransitionLayout& layout() const { return layout_; }
    double lift_of(const SurveyedSet& set) const { return set.height(layout_.trough.roll_gap) - level_; }

  private:
    std::shared_ptr<MeasuredSet> measured(const SurveyedSet& set) const {
        auto measured = std::make_shared<MeasuredSet>(set.measured);
        const double height = set.height(layout_.trough.roll_gap);
        for (MeasuredRoll& roll : measured->rolls)
            for (Eigen::Vector3d* end : {&roll.right, &roll.left}) end->z() -= height;
        const std::size_t count = measured->rolls.size();
        measured->angle = (slope_of(measured->rolls[count - 2]) - slope_of(measured->rolls[count - 1])) / 2;
        return measured;
    }

    void station(const SurveyedSet& set) {
        Station& station = layout_.stations[number_of(set)];
        station.measured = measured(set);
        station.at = set.at;
        station.angle = station.measured->angle;
        station.lift = lift_of(set);
        const std::vector<MeasuredRoll>& rolls = station.measured->rolls;
        if (rolls.size() == 5) station.inner_angle = (slope_of(rolls[1]) - slope_of(rolls[2])) / 2;
    }

    void full_set(const SurveyedSet& set) {
        const std::size_t number = number_of(set);
        if (layout_.measured.size() <= number) layout_.measured.resize(number + 1);
        const auto placed = measured(set);
        placed->ahead = set.at - (layout_.distance + static_cast<double>(number) * layout_.trough.spacing);
        placed->height = lift_of(set);
        layout_.measured[number] = placed;
    }

    TransitionLayout layout_;
    double level_;
};

/// Heights that can't be those of one datum.
bool check_heights(CaseTable& table, const std::vector<SurveyedSet>& sets, const TransitionLayout& drawn,
                   const Placing& placing) {
    const std::vector<IdlerSet> as_drawn = idler_sets(drawn, most_full_sets);
    for (const SurveyedSet& set : sets) {
        const double lift = placing.lift_of(set), wanted = std::ranges::find(as_drawn, set.name, &IdlerSet::name)->lift;
        if (std::abs(lift - wanted) <= height_tolerance) continue;
        table.reject("set", fmt::format("{} stands {:.1f} mm above the full sets, drawn at {:.1f} mm", set.name, lift, wanted),
                     fmt::format("within {} mm of it, all heights from one datum", height_tolerance));
        return false;
    }
    return true;
}

/// In order from the pulley, clear of each other, with a drawn set behind the last.
bool check_places(CaseTable& table, const TransitionLayout& layout) {
    const double clear = layout.trough.roll_diameter + std::abs(layout.trough.centre_offset);
    const IdlerSet* before = nullptr;
    const std::vector<IdlerSet> sets = idler_sets(layout, static_cast<int>(layout.measured.size()) + 1);
    for (const IdlerSet& set : sets) {
        if (before && set.x < before->x + clear) {
            table.reject(
                "set", fmt::format("{} at {:.1f} mm is not clear of {} at {:.1f} mm", set.name, set.x, before->name, before->x),
                fmt::format("sets in order from the pulley, {} mm apart or more", clear));
            return false;
        }
        before = &set;
    }
    if (layout.trough.sets && *layout.trough.sets <= static_cast<int>(layout.measured.size())) {
        table.reject("set", "the last full set of the model is measured",
                     fmt::format("trough.sets = {} or more, or \"auto\"", layout.measured.size() + 1));
        return false;
    }
    return true;
}

/// The pulley's rolls and those of the first set stand clear.
bool check_pulley(CaseTable& table, const TransitionLayout& layout) {
    const IdlerSet first = idler_sets(layout, 1).front();
    const Roll pulley = pulley_roll(layout, 0);
    for (const SetRoll& roll : rolls_of(layout, first, 0)) {
        const double apart = std::hypot(roll.roll.centre.x() - pulley.centre.x(), roll.roll.centre.z() - pulley.centre.z());
        if (layout.pulley.support == Support::held || apart >= pulley.radius + roll.roll.radius) continue;
        table.reject("set", first.name + " stands in the pulley", "a place clear of the pulley");
        return false;
    }
    return true;
}

}  // namespace

std::optional<TransitionLayout> read_survey(CaseTable& file, const TransitionLayout& drawn) {
    CaseTable table = file.table("survey", false);
    if (!file.has("survey")) return {};
    if (!table.has("measured_to")) table.reject_missing("measured_to", "\"shell\" or \"axis\"");
    const auto measured_to = table.choice<MeasuredTo>("measured_to", {"shell", "axis"});
    const std::optional<double> top = table.quantity("pulley_top", height_range);
    const auto sets = read_sets(table, drawn, measured_to.value_or(MeasuredTo::shell));
    const std::optional<double> level = sets ? read_level(table, *sets, drawn.trough) : table.quantity("level", height_range);
    table.finish();
    if (!measured_to || !sets || !level || !std::isfinite(*level + top.value_or(0))) return {};
    Placing placing(drawn, *level);
    if (top) placing.pulley(*top);
    if (const double lift = placing.layout().pulley.lift; lift < lift_range.low || lift > lift_range.high) {
        table.reject("pulley_top", fmt::format("the pulley stands {:.1f} mm above the full sets", lift),
                     "from -1000 mm to 2000 mm, all heights from one datum");
        return {};
    }
    if (!check_heights(table, *sets, drawn, placing)) return {};
    placing.place(*sets);
    if (!check_places(table, placing.layout()) || !check_pulley(table, placing.layout())) return {};
    return placing.layout();
}

}  // namespace swale
