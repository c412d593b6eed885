#include "io/wear/wear_report.h"

#include "io/terminal/plain_text.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <numbers>

namespace swale {

namespace {

constexpr double degree = std::numbers::pi / 180;
constexpr double shown_rise = 0.08;           // of the pictures' cupped belts, rise / width
constexpr double shown_crease = 14 * degree;  // of their creases
constexpr double worth_saying = 0.02;         // likelihood of a belt whose fitted values are given
constexpr double clear = 0.9;                 // likelihood of a side from which it is named

// Where rolls can't tell, the belt itself does.
constexpr const char* at_the_belt =
    "no further place on these rolls would; the belt would, locked out and its tension secured: along a straight edge across "
    "it a cupped belt is one bow, a "
    "creased one bends at the junctions, a flat one lies (from memory, no source); so would a narrower range of D22";

std::string range_text(const Fitted& value, double scale, const char* unit, int decimals) {
    const double mean = std::abs(scale * value.mean) < 0.5 * std::pow(10, -decimals) ? 0 : scale * value.mean;  // not "-0"
    return fmt::format("{:.{}f} {} ({:.{}f} to {:.{}f})", mean, decimals, unit, scale * value.low, decimals, scale * value.high,
                       decimals);
}

std::string cupping_direction(const WearReport& report, double rise) {
    const bool carrying_down = report.file.survey.carrying_side_down;
    const bool edges_to_carrying = carrying_down ? rise < 0 : rise > 0;
    return std::string(rise > 0 ? "edges away from the roll" : "edges towards the roll") +
           (edges_to_carrying ? ", hollow on the carrying side like a trough" : ", hollow on the pulley side");
}

std::string cupping_text(const WearReport& report) {
    const Fitted& rise = report.diagnosis.cupping_rise;
    const double middle = rise.low > 0 || rise.high < 0 ? rise.mean : 0;
    const std::string direction = middle == 0 ? "either way" : cupping_direction(report, middle);
    return fmt::format("if cupped: its rise over the width, free of load, is {}, {}", range_text(rise, 1, "mm", 0), direction);
}

std::string side_text(const WearDiagnosis& diagnosis) {
    if (diagnosis.left_crease > clear && diagnosis.right_crease > clear) return "at both junctions";
    if (diagnosis.left_crease > clear && diagnosis.right_crease < 1 - clear) return "at the left junction alone";
    if (diagnosis.right_crease > clear && diagnosis.left_crease < 1 - clear) return "at the right junction alone";
    return fmt::format("on the left with {:.2f}, on the right with {:.2f}", diagnosis.left_crease, diagnosis.right_crease);
}

}  // namespace

std::vector<ExamplePressure> example_pressures(const WearSurvey& survey) {
    const double k = 8 * shown_rise / survey.run.width, fold = survey.carrying_side_down ? -shown_crease : shown_crease;
    const double off = std::min(0.06 * survey.run.width, (survey.roll_length - survey.run.width) / 2);
    const RollContact flat = contact_on_return_roll(survey.run, {});
    return {{"flat", flat},
            {"cupped, edges towards the roll", contact_on_return_roll(survey.run, {-k, 0, 0})},
            {"cupped, edges away from the roll", contact_on_return_roll(survey.run, {k, 0, 0})},
            {"creased at both junctions", contact_on_return_roll(survey.run, {0, fold, fold})},
            {"creased at the left junction", contact_on_return_roll(survey.run, {0, fold, 0})},
            {"flat, off the middle", flat, off}};
}

std::vector<Explanation> ranked(const WearDiagnosis& diagnosis) {
    std::vector<Explanation> order;
    for (int e = 0; e < explanations - 1; ++e) order.push_back(static_cast<Explanation>(e));
    std::stable_sort(order.begin(), order.end(),
                     [&](Explanation a, Explanation b) { return diagnosis.likelihoods[a] > diagnosis.likelihoods[b]; });
    return order;
}

std::vector<Explanation> three_explanations(const WearDiagnosis& diagnosis) {
    std::vector<Explanation> shown;
    bool has_crease = false, has_flat = false;
    for (const Explanation explanation : ranked(diagnosis)) {
        const bool creased = explanation == Explanation::creased || explanation == Explanation::both;
        const bool flat = explanation == Explanation::flat || explanation == Explanation::mistracked;
        if ((creased && has_crease) || (flat && has_flat)) continue;
        has_crease = has_crease || creased;
        has_flat = has_flat || flat;
        shown.push_back(explanation);
    }
    return shown;
}

std::string headline(const WearReport& report) {
    const WearDiagnosis& diagnosis = report.diagnosis;
    if (!diagnosis.verdict) return "CAN'T TELL: " + diagnosis.grounds;
    if (diagnosis.junction_failure) return "JUNCTION FAILURE, " + side_text(diagnosis) + ": " + diagnosis.grounds;
    if (diagnosis.cupping) return "CUPPING: " + diagnosis.grounds;
    if (diagnosis.verdict == Explanation::mistracked) return "MISTRACKING OF A FLAT BELT: " + diagnosis.grounds;
    return "NEITHER CUPPED NOR CREASED: " + diagnosis.grounds;
}

std::vector<std::string> fitted_values(const WearReport& report) {
    const WearDiagnosis& diagnosis = report.diagnosis;
    const double both = diagnosis.likelihoods[Explanation::both];
    std::vector<std::string> lines;
    if (diagnosis.likelihoods[Explanation::cupped] + both > worth_saying) lines.push_back(cupping_text(report));
    if (diagnosis.likelihoods[Explanation::creased] + both > worth_saying)
        lines.push_back(fmt::format("if creased: {} from flat at each crease, {}",
                                    range_text(diagnosis.crease_angle, 1 / degree, "deg", 0), side_text(diagnosis)));
    lines.push_back(fmt::format("stiffness across the belt D22: {} times {} N m", range_text(diagnosis.stiffness, 1, "", 2),
                                significant(report.file.belt.section.bending(1, 1) / 1000)));
    for (const RollJudgement& roll : diagnosis.rolls)
        lines.push_back(
            fmt::format("on \"{}\" the belt's centre line runs at {}", roll.name, range_text(roll.offset, 1, "mm", 0)));
    return lines;
}

std::string place_text(double y) {
    return std::abs(y) < 1 ? "the middle" : fmt::format("{:+.0f} mm, on the {}", y, y > 0 ? "left" : "right");
}

std::string further_look_title(const WearDiagnosis& diagnosis) {
    return diagnosis.verdict && !diagnosis.perhaps_creased ? "What would test it" : "What would decide";
}

std::string further_look_text(const WearReport& report) {
    const std::optional<FurtherLook>& look = report.diagnosis.further;
    if (!look) return at_the_belt;
    return fmt::format(
        "measure \"{}\" at {}: {} expects {:.1f} +- {:.1f} times the wear of an even pressure there, {} {:.1f} +- {:.1f}",
        look->roll, place_text(look->y), name_of(look->best), look->first, look->first_spread, name_of(look->rival),
        look->second, look->second_spread);
}

}  // namespace swale
