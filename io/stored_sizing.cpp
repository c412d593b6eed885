#include "io/stored_sizing.h"

#include "io/file_error.h"
#include "io/size_table.h"
#include "io/text_file.h"

#include <nlohmann/json.hpp>

#include <algorithm>
#include <cmath>
#include <numbers>

namespace swale {

namespace {

using Json = nlohmann::json;

double number_or_none(const Json& value) {
    return value.is_number() ? value.get<double>() : -INFINITY;
}

std::optional<double> optional_number(const Json& value) {
    return value.is_number() ? std::optional(value.get<double>()) : std::nullopt;
}

// A layout like the sized case's with what the search chose in it.
TransitionLayout layout_of(const Json& entry, const TransitionLayout& like) {
    TransitionLayout layout = like;
    layout.distance = entry.at("distance_mm");
    layout.pulley.lift = entry.at("lift_mm");
    layout.stations.clear();
    for (const Json& idler : entry.at("idlers")) {
        Station station;
        station.at = idler.at("at_mm");
        station.angle = idler.at("angle_deg").get<double>() * std::numbers::pi / 180;
        station.lift = idler.at("lift_mm").get<double>();
        layout.stations.push_back(station);
    }
    return layout;
}

Arrangement arrangement_of(const Json& entry, const TransitionCase& sized) {
    Arrangement one{entry.at("name"), sized, entry.at("passes"), number_or_none(entry.at("headroom")), entry.at("binding")};
    one.transition.layout = layout_of(entry, sized.layout);
    return one;
}

SizingStep step_of(const Json& entry, const TransitionCase& sized) {
    return {layout_of(entry, sized.layout),       entry.at("coarse"), entry.at("whole"), entry.at("passed"),
            number_or_none(entry.at("headroom")), entry.at("binding")};
}

Lever lever_of(const Json& entry) {
    return {entry.at("parameter"), entry.at("unit"), number_or_none(entry.at("headroom_per_unit")),
            optional_number(entry.at("needed")), optional_number(entry.at("distance_mm_per_unit"))};
}

StoredSizing sizing_of(const Json& json, const TransitionCase& sized) {
    StoredSizing stored;
    const auto aim = std::ranges::find(aim_words(), json.at("find").get<std::string>());
    if (aim == aim_words().end()) throw Json::other_error::create(501, "find", nullptr);
    stored.bounds.aim = static_cast<SizingAim>(aim - aim_words().begin());
    Sizing& sizing = stored.sizing;
    if (json.at("best").is_object()) sizing.best = arrangement_of(json.at("best"), sized);
    for (const Json& entry : json.at("arrangements")) sizing.arrangements.push_back(arrangement_of(entry, sized));
    for (const Json& entry : json.at("steps")) sizing.steps.push_back(step_of(entry, sized));
    for (const Json& entry : json.at("levers")) sizing.levers.push_back(lever_of(entry));
    sizing.reason = json.at("reason");
    sizing.states_tried = json.at("states_tried");
    sizing.whole_solutions = json.at("whole_solutions");
    return stored;
}

// The sized case is written with its lengths rounded.
bool tells_of(const Sizing& sizing, const TransitionLayout& sized) {
    if (sizing.arrangements.empty()) return false;
    const TransitionLayout& found = sizing.arrangements.front().transition.layout;
    return std::abs(found.distance - sized.distance) < 1 && std::abs(found.pulley.lift - sized.pulley.lift) < 1 &&
           found.stations.size() == sized.stations.size();
}

}  // namespace

std::optional<StoredSizing> read_stored_sizing(const std::filesystem::path& folder, const TransitionCase& sized) {
    const std::filesystem::path path = folder / "sizing.json";
    if (!std::filesystem::exists(path)) return {};
    try {
        StoredSizing stored = sizing_of(Json::parse(read_text_file(path)), sized);
        if (!tells_of(stored.sizing, sized.layout)) return {};
        return stored;
    } catch (const Json::exception&) {
        throw FileError(path, "is no sizing.json of swale size");
    }
}

}  // namespace swale
