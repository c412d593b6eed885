#include "io/screening_json.h"

namespace swale {

namespace {

using Json = nlohmann::ordered_json;

Json number(const std::optional<double>& value) {
    return value ? Json(*value) : Json(nullptr);
}

}  // namespace

Json hand_methods_json(const Screening& screening) {
    Json list = Json::array();
    for (const HandMethod& method : screening.methods)
        list.push_back({{"name", method.name},
                        {"minimum_distance_mm", number(method.minimum_distance)},
                        {"edge_strain", number(method.edge_strain)},
                        {"centre_strain", number(method.centre_strain)},
                        {"remark", method.remark},
                        {"source", method.source}});
    return list;
}

}  // namespace swale
