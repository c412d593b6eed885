#include "io/data_sheet_json.h"

namespace swale {

nlohmann::ordered_json data_sheet_json(const DataSheet& sheet) {
    auto data = nlohmann::ordered_json::array();
    for (const BeltDatum& datum : sheet)
        data.push_back({{"name", datum.name},
                        {"value", datum.value},
                        {"unit", datum.unit},
                        {"grade", datum.origin.grade},
                        {"source", datum.origin.source}});
    return data;
}

}  // namespace swale
