#include "io/data_sheet_json.h"

namespace swale {

namespace {

nlohmann::ordered_json range_json(const std::optional<Range>& range) {
    if (!range) return nullptr;
    return {{"low", range->low}, {"high", range->high}, {"source", range->source}};
}

}  // namespace

nlohmann::ordered_json data_sheet_json(const DataSheet& sheet) {
    auto data = nlohmann::ordered_json::array();
    for (const BeltDatum& datum : sheet)
        data.push_back({{"name", datum.name},
                        {"value", datum.value},
                        {"unit", datum.unit},
                        {"grade", datum.origin.grade},
                        {"source", datum.origin.source},
                        {"range", range_json(datum.range)}});
    return data;
}

}  // namespace swale
