#include "io/hdf5/case_groups.h"

#include "io/hdf5/result_layout.h"
#include "io/hdf5/rows.h"
#include "io/verdict.h"
#include "io/version.h"

#include <cmath>

namespace swale {

namespace {

void write_provenance(const Hdf5Group& root, const RunRecord& record, const std::string& written_at) {
    root.attribute("format", std::string(result_layout::format));
    root.attribute("format_version", result_layout::format_version);
    root.attribute("swale_version", version());
    root.attribute("written_at", written_at);
    root.attribute("title", record.transition.title);
    root.attribute("case_file", record.case_file);
    root.attribute("verdict", verdict(record.result));
    root.attribute("units", std::string("mm, N, t, s, rad"));
    root.text("case_text", record.case_text);
    if (record.catalogue) root.text("catalogue_text", record.catalogue->text);
}

void write_settings(const Hdf5Group& root, const RunRecord& record) {
    const SolveSettings& settings = record.transition.settings;
    const Hdf5Group group = root.group("settings");
    group.attribute("accuracy", settings.accuracy);
    group.attribute("model", std::string(settings.model == Symmetry::half ? "half" : "full"));
    group.attribute("grid", settings.grid);
    group.attribute("newton_iterations", settings.newton_iterations);
    group.attribute("starts", settings.starts);
    group.attribute("tension_path", settings.tension_path);
    group.attribute("sets", record.result.sets);
}

void write_law(const Hdf5Group& group, const char* name, const char* unit, const Eigen::Matrix3d& law) {
    std::vector<double> values;
    for (int i = 0; i < 3; ++i)
        for (int j = 0; j < 3; ++j) values.push_back(law(i, j));
    group.numbers(name, unit, {3, 3}, values);
}

void write_belt(const Hdf5Group& root, const Belt& belt) {
    const Hdf5Group group = root.group("belt");
    group.attribute("designation", belt.designation);
    group.attribute("width_mm", belt.width);
    group.attribute("thickness_mm", belt.section.thickness);
    group.attribute("underside_mm", belt.section.underside);
    group.attribute("mass_t_per_mm2", belt.section.mass);
    group.attribute("foundation_N_per_mm3", belt.section.foundation);
    group.attribute("rated_tension_N_per_mm", number_or_nan(belt.rated_tension));
    write_law(group, "membrane", "N/mm", belt.section.membrane);
    write_law(group, "bending", "N mm", belt.section.bending);
    const Hdf5Group data = group.group("data");
    write_texts(data, "name", belt.data, [](const BeltDatum& datum) { return datum.name; });
    write_numbers(data, "value", "see column unit", belt.data, [](const BeltDatum& datum) { return datum.value; });
    write_numbers(data, "low", "see column unit", belt.data,
                  [](const BeltDatum& datum) { return datum.range ? datum.range->low : NAN; });
    write_numbers(data, "high", "see column unit", belt.data,
                  [](const BeltDatum& datum) { return datum.range ? datum.range->high : NAN; });
    write_texts(data, "unit", belt.data, [](const BeltDatum& datum) { return datum.unit; });
    write_texts(data, "grade", belt.data, [](const BeltDatum& datum) { return datum.origin.grade; });
    write_texts(data, "source", belt.data, [](const BeltDatum& datum) { return datum.origin.source; });
}

void write_rolls(const Hdf5Group& root, const std::vector<NamedRoll>& rolls) {
    const Hdf5Group group = root.group("rolls");
    write_texts(group, "name", rolls, [](const NamedRoll& named) { return named.name; });
    write_vectors(group, "centre", "mm", rolls, [](const NamedRoll& named) { return named.roll.centre; });
    write_vectors(group, "axis", "1", rolls, [](const NamedRoll& named) { return named.roll.axis; });
    write_vectors(group, "up", "1", rolls, [](const NamedRoll& named) { return named.roll.up; });
    write_numbers(group, "radius", "mm", rolls, [](const NamedRoll& named) { return named.roll.radius; });
    write_numbers(group, "half_length", "mm", rolls, [](const NamedRoll& named) { return named.roll.half_length; });
    write_numbers(group, "end_radius", "mm", rolls, [](const NamedRoll& named) { return named.roll.end_radius; });
}

void write_criteria(const Hdf5Group& root, const std::vector<Judgement>& criteria) {
    const Hdf5Group group = root.group("criteria");
    write_texts(group, "name", criteria, [](const Judgement& entry) { return entry.name; });
    write_texts(group, "state", criteria, [](const Judgement& entry) { return entry.state; });
    write_numbers(group, "value", "see column unit", criteria,
                  [](const Judgement& entry) { return number_or_nan(entry.value); });
    write_numbers(group, "limit", "see column unit", criteria,
                  [](const Judgement& entry) { return number_or_nan(entry.limit); });
    write_texts(group, "unit", criteria, [](const Judgement& entry) { return entry.unit; });
    write_numbers(group, "utilisation", "1", criteria, [](const Judgement& entry) { return number_or_nan(entry.utilisation); });
    group.integers("passed",
                   column_of(criteria, [](const Judgement& entry) { return entry.passed ? int{*entry.passed} : -1; }));
    group.integers("advisory", column_of(criteria, [](const Judgement& entry) { return int{entry.advisory}; }));
    write_texts(group, "source", criteria, [](const Judgement& entry) { return entry.source; });
    write_numbers(group, "x", "mm", criteria, [](const Judgement& entry) { return number_or_nan(entry.x); });
    write_numbers(group, "y", "mm", criteria, [](const Judgement& entry) { return number_or_nan(entry.y); });
    write_texts(group, "where", criteria, [](const Judgement& entry) { return entry.where; });
}

void write_cost(const Hdf5Group& root, const Cost& cost) {
    const Hdf5Group group = root.group("cost");
    group.attribute("degrees_of_freedom", cost.degrees_of_freedom);
    group.attribute("newton_iterations", cost.newton_iterations);
    group.attribute("seconds", cost.seconds);
    group.attribute("assembly_seconds", cost.assembly_seconds);
    group.attribute("contact_seconds", cost.contact_seconds);
    group.attribute("factorisation_seconds", cost.factorisation_seconds);
    group.attribute("stability_seconds", cost.stability_seconds);
    group.attribute("recovery_seconds", cost.recovery_seconds);
}

}  // namespace

void write_case_groups(const Hdf5Group& root, const RunRecord& record, const std::string& written_at) {
    write_provenance(root, record, written_at);
    write_settings(root, record);
    write_belt(root, record.transition.belt);
    write_rolls(root, record.result.rolls);
    write_criteria(root, record.result.criteria);
    write_cost(root, record.result.cost);
}

}  // namespace swale
