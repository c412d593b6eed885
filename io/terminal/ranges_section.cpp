#include "io/terminal/ranges_section.h"

#include "io/terminal/plain_text.h"
#include "io/terminal/text_table.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace swale {

namespace {

constexpr double worth_measuring = 0.02;  // less than this share is no reason to measure a number

std::string number(double value) {
    return significant(value, 4);
}

std::string percent(double share) {
    return fmt::format("{:.1f}", 100 * share);
}

// Largest estimated error of the case as given, in the measure of the swings.
std::string error_of(const StudiedRun& as_given, const StudiedQuantity& quantity) {
    double largest = 0;
    for (const StudiedState& state : as_given.states) {
        if (!state.readings) continue;
        const Reading &reading = *state.readings.*quantity.reading, &scale = *state.readings.*quantity.scale;
        largest = std::max(largest, (reading.error.value_or(0) + reading.far_end_error.value_or(0)) / std::abs(scale.value));
    }
    return percent(largest);
}

std::string table(const RangeStudy& study) {
    std::vector<TextRow> rows{{"Swing [%]", "low", "as given", "high", ""}, {"", "", "", "", ""}};
    for (const StudiedQuantity& quantity : all_studied_quantities()) {
        const std::string name = quantity.name;  // two words, one below the other
        const size_t space = name.find(' ');
        rows[0].push_back(name.substr(0, space));
        rows[1].push_back(name.substr(space + 1));
    }
    for (const StudiedDatum& studied : study.data) {
        const BeltDatum& datum = studied.datum;
        rows.push_back({datum.name, number(datum.range->low), number(datum.value), number(datum.range->high), datum.unit});
        for (const RangeEffect& effect : studied.effects) rows.back().push_back(percent(effect.swing));
    }
    rows.push_back({"estimated error", "", "", "", ""});
    for (const StudiedQuantity& quantity : all_studied_quantities()) rows.back().push_back(error_of(study.as_given, quantity));
    return text_table(rows, "lrrrlr");
}

// The rating moves no solution, only what an edge tension is held against.
std::string rating_sentence(const RangeStudy& study) {
    for (const StudiedDatum& studied : study.data) {
        if (studied.datum.name != "rated_tension") continue;
        const Range& range = *studied.datum.range;
        return "  " +
               wrapped(fmt::format("rated_tension moves no strain, but edge tension / rated tension, by {} % from end to end",
                                   significant(100 * studied.datum.value * (1 / range.low - 1 / range.high), 2)),
                       2);
    }
    return "";
}

// "edge strain: A66 (12 %), A11 (4.1 %)"
std::string measure_first(const RangeStudy& study, int q) {
    std::vector<const StudiedDatum*> data;
    for (const StudiedDatum& datum : study.data)
        if (datum.effects[q].swing >= worth_measuring) data.push_back(&datum);
    std::ranges::stable_sort(data, std::ranges::greater(), [q](const StudiedDatum* d) { return d->effects[q].swing; });
    std::string text;
    for (const StudiedDatum* datum : data)
        text += fmt::format("{}{} ({} %)", text.empty() ? "" : ", ", datum->datum.name,
                            significant(100 * datum->effects[q].swing, 2));
    return fmt::format("{}: {}", all_studied_quantities()[q].name, text.empty() ? "none does 2 %" : text);
}

std::string said_of(const StudiedRun& run, const std::string& which) {
    std::string text;
    for (const std::string& limit : run.exceeded)
        text += "  - " + wrapped(fmt::format("{}: over its limit: {}", which, printable(limit)), 4);
    for (const StudiedState& state : run.states)
        if (!state.readings)
            text +=
                "  - " + wrapped(fmt::format("{}: \"{}\" has no solution: {}", which, printable(state.name), state.reason), 4);
    return text;
}

std::string said_of_all(const RangeStudy& study) {
    std::string text = said_of(study.as_given, "as given");
    for (const StudiedDatum& studied : study.data)
        text += said_of(studied.low, studied.datum.name + " low") + said_of(studied.high, studied.datum.name + " high");
    return text.empty() ? "  - every limit holds at every end\n" : text;
}

}  // namespace

std::string ranges_section(const TransitionCase& transition, const RangeStudy& study) {
    std::string text = wrapped(transition.title);
    text += wrapped("The belt's uncertain numbers, each at both ends of its range while the others are as given:") + "\n";
    text += table(study);
    text +=
        "  Swing: what lies between both ends, in the state where that is most, in % of the value as given;\n"
        "  of centre strain and lowest tension, which may vanish, in % of the edge's\n";
    text += rating_sentence(study) + "\n";
    text += "To have measured first\n";
    for (int q = 0; q < studied_quantities; ++q) text += "  - " + wrapped(measure_first(study, q), 4);
    return text + "\nLimits and solutions\n" + said_of_all(study);
}

}  // namespace swale
