#include "io/terminal/data_sheet_section.h"

#include "io/terminal/plain_text.h"
#include "io/terminal/text_table.h"

#include <fmt/format.h>

namespace swale {

namespace {

constexpr int name_width = 13;  // of "rated_tension"

std::string number(double value) {
    return significant(value, 4);
}

TextRow row_of(const BeltDatum& datum) {
    const std::string low = datum.range ? number(datum.range->low) : "", high = datum.range ? number(datum.range->high) : "";
    return {datum.name, datum.unit, number(datum.value), low, high, datum.origin.grade};
}

std::string origin_of(const BeltDatum& datum) {
    const std::string range = datum.range ? "; low to high: " + datum.range->source : "";
    return fmt::format("  {:<{}}  {}", datum.name, name_width, wrapped(datum.origin.source + range, name_width + 4));
}

}  // namespace

std::string data_sheet_section(const DataSheet& sheet) {
    std::vector<TextRow> rows{{"", "unit", "value", "low", "high", "grade"}};
    std::string origins;
    for (const BeltDatum& datum : sheet) {
        rows.push_back(row_of(datum));
        origins += origin_of(datum);
    }
    return text_table(rows, "llrrrl") + "\nWhere the numbers come from\n" + origins;
}

}  // namespace swale
