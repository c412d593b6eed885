#include "io/size_json.h"

#include "io/json_number.h"
#include "io/size_table.h"

#include <numbers>

namespace swale {

namespace {

using Json = nlohmann::ordered_json;

constexpr double degree = std::numbers::pi / 180;

Json idlers_json(const TransitionLayout& layout) {
    Json idlers = Json::array();
    for (const Station& station : layout.stations)
        idlers.push_back({{"at_mm", station.at}, {"angle_deg", station.angle / degree}, {"lift_mm", layout.lift_of(station)}});
    return idlers;
}

Json layout_json(const TransitionLayout& layout) {
    return {{"distance_mm", layout.distance}, {"lift_mm", layout.pulley.lift}, {"idlers", idlers_json(layout)}};
}

Json arrangement_json(const Arrangement& arrangement) {
    Json json{{"name", arrangement.name}};
    json.update(layout_json(arrangement.transition.layout));
    json.update(
        {{"passes", arrangement.passes}, {"headroom", json_number(arrangement.headroom)}, {"binding", arrangement.binding}});
    return json;
}

Json step_json(const SizingStep& step) {
    Json json = layout_json(step.layout);
    json.update({{"coarse", step.coarse},
                 {"whole", step.whole},
                 {"passed", step.passed},
                 {"headroom", json_number(step.headroom)},
                 {"binding", step.binding}});
    return json;
}

Json lever_json(const Lever& lever) {
    return {{"parameter", lever.parameter},
            {"unit", lever.unit},
            {"headroom_per_unit", json_number(lever.slope)},
            {"needed", json_number(lever.needed)},
            {"distance_mm_per_unit", json_number(lever.distance)}};
}

template <class Items, class Write>
Json list_of(const Items& items, const Write& write) {
    Json list = Json::array();
    for (const auto& item : items) list.push_back(write(item));
    return list;
}

}  // namespace

std::string size_json(const Sizing& sizing, const SizingBounds& bounds, const std::string& title) {
    Json answer{{"title", title}, {"find", aim_words().at(static_cast<std::size_t>(bounds.aim))}};
    answer["distance_mm"] = sizing.best ? json_number(sizing.best->transition.layout.distance) : Json();
    answer["best"] = sizing.best ? arrangement_json(*sizing.best) : Json();
    answer["reason"] = sizing.reason;
    answer["arrangements"] = list_of(sizing.arrangements, arrangement_json);
    answer["levers"] = list_of(sizing.levers, lever_json);
    answer["steps"] = list_of(sizing.steps, step_json);
    answer["states_tried"] = sizing.states_tried;
    answer["whole_solutions"] = sizing.whole_solutions;
    return answer.dump(2, ' ', false, Json::error_handler_t::replace) + "\n";
}

std::string as_built_json(const AsBuilt& as_built, const std::string& title) {
    Json answer{{"title", title}};
    answer["as_measured"] = arrangement_json(as_built.measured);
    answer["as_drawn"] = arrangement_json(as_built.drawn);
    answer["changes"] = list_of(as_built.changes, arrangement_json);
    answer["levers"] = list_of(as_built.levers, lever_json);
    return answer.dump(2, ' ', false, Json::error_handler_t::replace) + "\n";
}

}  // namespace swale
