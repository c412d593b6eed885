#include "io/belt_table.h"

#include "io/measured_table.h"
#include "io/near_miss.h"
#include "io/section_table.h"
#include "io/text_file.h"
#include "materials/catalogue.h"
#include "materials/overrides.h"

#include <cmath>
#include <filesystem>

namespace swale {
namespace {

constexpr Allowed width_range = {Kind::length, 100, 5000};
constexpr double smallest_share = 1e-3;
constexpr double any_width = 1000;  // [mm] stands in for an unreadable width, so that the designation is still looked at

/// The user's own belts, none if the case names no catalogue; absent if the one it names can't be found.
std::optional<std::vector<Belt>> own_belts(CaseTable& table, double width, const CatalogueSource& source) {
    const std::optional<std::string> name = table.text("catalogue");
    if (!name || name->empty()) return std::vector<Belt>();
    const std::filesystem::path path = catalogue_path(*name, source.case_file);
    if (!source.stored && !std::filesystem::is_regular_file(path)) {
        table.reject("catalogue", "there is no file " + path.string(),
                     "a TOML file of [[belt]] tables, its path as seen from the case file");
        return std::nullopt;
    }
    const std::string text = source.stored ? *source.stored : read_text_file(path, belt_catalogue);
    return read_belt_catalogue({path.string(), text}, width > 0 ? width : any_width);
}

/// Either a catalogue's belt or the section outright. Without `own` nobody can say whether a designation is good.
Belt read_source(CaseTable& table, double width, const std::optional<std::vector<Belt>>& own) {
    const bool outright = table.has("section");
    const bool designated = table.has("designation");
    if (!outright && !designated)
        table.reject_missing("designation", "a designation like \"EP 800/4 6+3\", or the section outright in [belt.section]");
    if (outright && designated) table.reject("designation", "both a designation and [belt.section] are given", "one of both");
    CaseTable section = table.table("section", false);
    if (outright) return belt_of_section(section);
    const std::optional<std::string> designation = table.text("designation");
    if (!designation || !own) return {};
    const Belt* found = find_belt(*own, *designation);
    return found ? *found : belt_of_designation(table, "designation", width, *own);
}

void apply_compression(CaseTable& table, Belt& belt) {
    const std::optional<double> share = table.number("compressive_stiffness", smallest_share, 1);
    if (share && !std::isnan(*share)) set_compressive_stiffness(belt, *share);
}

}  // namespace

Belt belt_of_designation(CaseTable& table, const std::string& key, double width, const std::vector<Belt>& own) {
    const std::string designation = table.required_text(key);
    Belt belt;
    if (designation.empty()) return belt;
    try {
        belt = belt_from_designation(designation, width > 0 ? width : any_width);
    } catch (const BadDesignation& error) {
        const std::string near = near_designation(own, designation);
        const std::string named = own.empty() ? "" : ", or of the case's catalogue: " + listed(designations_of(own), true);
        table.reject(key, near.empty() ? error.what() : not_among(designation, near),
                     "a designation like \"EP 800/4 6+3\" or \"ST 1600 8+6\"" + named);
    }
    return belt;
}

Belt read_belt(CaseTable table, const CatalogueSource& source) {
    const double width = table.required_quantity("width", width_range);
    const std::optional<std::vector<Belt>> own = own_belts(table, width, source);
    Belt belt = read_source(table, width, own);
    belt.width = width;
    read_measured(table, belt);
    apply_compression(table, belt);
    table.finish();
    return belt;
}

}  // namespace swale
