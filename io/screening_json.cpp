#include "io/screening_json.h"

#include "io/json_number.h"

namespace swale {

using Json = nlohmann::ordered_json;

Json hand_methods_json(const Screening& screening) {
    Json list = Json::array();
    for (const HandMethod& method : screening.methods)
        list.push_back({{"name", method.name},
                        {"minimum_distance_mm", json_number(method.minimum_distance)},
                        {"edge_strain", json_number(method.edge_strain)},
                        {"centre_strain", json_number(method.centre_strain)},
                        {"remark", method.remark},
                        {"source", method.source},
                        {"validity", method.validity}});
    return list;
}

}  // namespace swale
