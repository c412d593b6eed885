#include "io/wear_survey.h"

#include "io/belt_table.h"
#include "io/case_table.h"
#include "io/text_file.h"
#include "io/toml_document.h"
#include "io/trough_table.h"
#include "io/wear/marks.h"
#include "io/wear/places.h"
#include "io/wear/readings_csv.h"
#include "materials/data_sheet.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <utility>

namespace swale {
namespace {

constexpr Allowed tension_range = {Kind::force, 0.05, 2000};
constexpr Allowed spacing_range = {Kind::length, 300, 12000};
constexpr Allowed diameter_range = {Kind::length, 40, 400};
constexpr Allowed roll_length_range = {Kind::length, 100, 5500};
constexpr Allowed place_range = {Kind::length, -2750, 2750};
constexpr Allowed depth_range = {Kind::length, 0, deepest_wear};

// Given outright or measured, D22 is one number; this much is still left open, tension and spacing with it. An assumption.
constexpr double given_low = 0.75, given_high = 1.33;

constexpr const char* readings_file = "readings as CSV";

constexpr double overlap = 1;  // [mm] of two bands that contradict each other
constexpr int most_rolls = 40;

enum class Side { carrying, pulley };

void read_stiffness_range(WearSurveyFile& file) {
    WearSurvey& survey = file.survey;
    survey.stiffness_low = given_low;
    survey.stiffness_high = given_high;
    file.stiffness_source = "a quarter to a third to either side of the number given: an assumption";
    for (const BeltDatum& entry : file.belt.data) {
        if (entry.name != "D22" || !entry.range) continue;
        survey.stiffness_low = std::min(entry.range->low / entry.value, given_low);
        survey.stiffness_high = std::max(entry.range->high / entry.value, given_high);
        file.stiffness_source = entry.range->source;
    }
}

void read_return(CaseTable table, WearSurveyFile& file) {
    WearSurvey& survey = file.survey;
    survey.run.tension = table.required_quantity("tension", tension_range);
    survey.run.spacing = table.required_quantity("spacing", spacing_range);
    survey.run.roll_diameter = table.required_quantity("roll_diameter", diameter_range);
    survey.roll_length = table.required_quantity("roll_length", roll_length_range);
    if (survey.roll_length < survey.run.width)
        table.reject("roll_length", "the roll is shorter than the belt is wide",
                     fmt::format("the belt's width of {:.0f} mm or more", survey.run.width));
    const auto side = table.choice<Side>("side_down", {"carrying", "pulley"});
    survey.carrying_side_down = side.value_or(Side::carrying) == Side::carrying;
    table.finish();
}

void read_junction(CaseTable table, WearSurveyFile& file) {
    const Trough trough = read_trough(table, file.belt.width);
    if (trough.rolls != 3)
        table.reject("rolls", "wear is read for belts that ran on sets of three rolls", "3, or leave it out");
    file.trough_angle = trough.angle;
    file.survey.run.junction = (trough.centre_roll + trough.roll_gap) / 2;
    if (file.survey.run.junction > 0.45 * file.belt.width)
        table.reject("centre_roll", "the belt has next to no wings", "a centre roll of less than 0.9 belt widths");
    table.finish();
}

double read_place(CaseTable& table, const std::string& key, double half) {
    const double y = table.required_quantity(key, place_range);
    if (!on_roll(y, half)) table.reject(key, off_roll_text(y), roll_text(half));
    return y;
}

SurveyedRoll read_roll(CaseTable table, double half) {
    SurveyedRoll roll;
    roll.name = table.required_text("name");
    for (CaseTable& depth : table.tables("depth")) {
        const double at = read_place(depth, "at", half);
        roll.depths.push_back({at, depth.required_quantity("depth", depth_range)});
        depth.finish();
    }
    for (CaseTable& band : table.tables("band")) {
        const double from = read_place(band, "from", half), to = read_place(band, "to", half);
        if (from >= to) band.reject("to", "the band has no length", "more than from");
        if (!band.has("mark")) band.reject_missing("mark", "contact, none or unsure");
        roll.bands.push_back({from, to, band.choice<Mark>("mark", mark_words()).value_or(Mark::unsure)});
        band.finish();
    }
    table.finish();
    return roll;
}

void add(std::vector<SurveyedRoll>& rolls, const SurveyedRoll& roll) {
    const auto same = std::find_if(rolls.begin(), rolls.end(), [&](const SurveyedRoll& r) { return r.name == roll.name; });
    if (same == rolls.end()) return rolls.push_back(roll);
    same->depths.insert(same->depths.end(), roll.depths.begin(), roll.depths.end());
    same->bands.insert(same->bands.end(), roll.bands.begin(), roll.bands.end());
}

void read_rolls(CaseTable& table, WearSurveyFile& file) {
    const double half = file.survey.roll_length / 2;
    for (const CaseTable& roll : table.tables("roll")) add(file.survey.rolls, read_roll(roll, half));
    const std::optional<std::string> csv = table.text("readings");
    if (!csv || csv->empty()) return;
    const std::filesystem::path path = std::filesystem::path(file.file).parent_path() / *csv;
    if (!std::filesystem::is_regular_file(path))
        return table.reject("readings", "there is no file " + path.string(), "a CSV file, its path as seen from the survey");
    for (const SurveyedRoll& roll : read_readings_csv(read_text_file(path, readings_file), path.string(), half))
        add(file.survey.rolls, roll);
}

std::string band_text(const MarkedBand& band) {
    return fmt::format("{:.0f} to {:.0f} mm {}", band.from, band.to, mark_words()[static_cast<int>(band.mark)]);
}

/// What can't be seen on a roll.
class RollCheck {
  public:
    explicit RollCheck(CaseTable& table) : table_(table) {}

    void look_at(const SurveyedRoll& roll) {
        if (roll.depths.empty() && roll.bands.empty()) reject(roll, "nothing was read on it", "depths or bands");
        contradictions(roll);
    }

  private:
    void contradictions(const SurveyedRoll& roll) {
        for (std::size_t a = 0; a < roll.bands.size(); ++a)
            for (std::size_t b = 0; b < a; ++b) {
                const MarkedBand &one = roll.bands[b], &other = roll.bands[a];
                const bool both = std::min(one.to, other.to) - std::max(one.from, other.from) > overlap;
                const bool differ = one.mark != other.mark && one.mark != Mark::unsure && other.mark != Mark::unsure;
                if (both && differ)
                    reject(roll, "the bands " + band_text(one) + " and " + band_text(other) + " contradict each other",
                           "one mark for each place");
            }
    }

    void reject(const SurveyedRoll& roll, const std::string& problem, const std::string& allowed) {
        table_.reject(table_.has("roll") ? "roll" : "readings", "roll \"" + on_one_line(roll.name) + "\": " + problem, allowed);
    }

    CaseTable& table_;
};

void check_rolls(CaseTable& table, const WearSurvey& survey) {
    if (survey.rolls.empty()) table.reject_missing("roll", "tables [[roll]] with depths or bands, or readings = \"FILE.csv\"");
    if (survey.rolls.size() > most_rolls) table.reject("roll", "too many rolls", fmt::format("up to {}", most_rolls));
    RollCheck check(table);
    for (const SurveyedRoll& roll : survey.rolls) check.look_at(roll);
}

void read_transition(CaseTable table, WearSurveyFile& file) {
    const std::optional<std::string> name = table.text("case");
    table.finish();
    if (!name || name->empty()) return;
    file.transition = std::filesystem::path(file.file).parent_path() / *name;
    if (!std::filesystem::is_regular_file(*file.transition))
        table.reject("case", "there is no file " + file.transition->string(), "a case file, its path as seen from the survey");
}

}  // namespace

WearSurveyFile parse_wear_survey(const std::string& text, const std::string& file) {
    const TomlNode document = read_document(text, file);
    Mistakes mistakes(file);
    CaseTable table(document, "", mistakes);
    WearSurveyFile result;
    result.file = file;
    result.text = text;
    result.title = table.text("title").value_or(std::filesystem::path(file).stem().string());
    result.belt = read_belt(table.table("belt", true), {file, std::nullopt});
    result.survey.run.section = result.belt.section;
    result.survey.run.width = result.belt.width;
    read_return(table.table("return", true), result);
    read_junction(table.table("trough", true), result);
    read_rolls(table, result);
    read_transition(table.table("transition", false), result);
    if (mistakes.none()) check_rolls(table, result.survey);
    table.finish();
    mistakes.throw_if_any();
    read_stiffness_range(result);
    return result;
}

WearSurveyFile read_wear_survey(const std::filesystem::path& path) {
    return parse_wear_survey(read_text_file(path, "a survey in TOML"), path.string());
}

}  // namespace swale
