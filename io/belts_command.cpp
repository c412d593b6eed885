#include "io/belts_command.h"

#include "io/belt_catalogue.h"
#include "io/data_sheet_json.h"
#include "io/terminal/belt_warnings.h"
#include "io/terminal/data_sheet_section.h"
#include "io/terminal/plain_text.h"
#include "io/text_file.h"
#include "materials/catalogue.h"

#include <fmt/format.h>
#include <fmt/ranges.h>
#include <nlohmann/json.hpp>

namespace swale {
namespace {

using Json = nlohmann::ordered_json;

constexpr double any_width = 1000;  // [mm] a data sheet is per width

std::vector<std::string> carcass_names(const BeltFamily& family) {
    std::vector<std::string> names;
    for (const CarcassCode& carcass : family.carcasses) names.push_back(to_string(carcass));
    return names;
}

/// "800/4" for "EP 800/4": the family's code stands above the list.
std::vector<std::string> codes_alone(const BeltFamily& family) {
    std::vector<std::string> names = carcass_names(family);
    for (std::string& name : names) name.erase(0, family.code.size() + 1);
    return names;
}

std::vector<Belt> own_belts(const BeltsRequest& request) {
    if (!request.catalogue) return {};
    return read_belt_catalogue({*request.catalogue, read_text_file(*request.catalogue, belt_catalogue)}, any_width);
}

Json families_json(const std::vector<Belt>& own) {
    Json families = Json::array();
    for (const BeltFamily& family : belt_families())
        families.push_back({{"code", family.code},
                            {"title", family.title},
                            {"form", family.form},
                            {"cover_min_mm", family.cover_min},
                            {"cover_max_mm", family.cover_max},
                            {"carcasses", carcass_names(family)}});
    return {{"families", families}, {"own", designations_of(own)}};
}

Json sheet_json(const Belt& belt) {
    return {{"designation", belt.designation}, {"data", data_sheet_json(belt.data)}, {"warnings", belt.warnings}};
}

std::string families_text(const std::vector<Belt>& own) {
    std::string text;
    if (!own.empty()) text = wrapped(fmt::format("Own: {}", fmt::join(designations_of(own), ", "))) + "\n";
    for (const BeltFamily& family : belt_families())
        text += fmt::format("{}  {}\n  written {}, covers {} to {} mm\n  {}\n", family.code, family.title, family.form,
                            family.cover_min, family.cover_max,
                            wrapped(fmt::format("{}", fmt::join(codes_alone(family), ", ")), 2));
    return text + "Data of one belt: swale belts \"EP 800/4 6+3\"\n";
}

std::string sheet_text(const Belt& belt) {
    std::string text = belt.designation + "\n" + data_sheet_section(belt.data);
    text += belt_warnings(belt);
    return text;
}

/// Throws BadDesignation.
Belt belt_of(const std::string& designation, const std::vector<Belt>& own) {
    if (const Belt* found = find_belt(own, designation)) return *found;
    try {
        return belt_from_designation(designation, any_width);
    } catch (const BadDesignation& error) {
        const std::string near = near_designation(own, designation);
        throw BadDesignation(near.empty() ? error.what() : not_among(designation, near));
    }
}

}  // namespace

int run_belts(const BeltsRequest& request, std::ostream& answer) {
    const std::vector<Belt> own = own_belts(request);
    if (!request.designation) {
        answer << (request.json ? families_json(own).dump(2) + "\n" : families_text(own));
        return 0;
    }
    const Belt belt = belt_of(*request.designation, own);
    answer << (request.json ? sheet_json(belt).dump(2) + "\n" : sheet_text(belt));
    return 0;
}

}  // namespace swale
