#include "io/load_table.h"

#include <fmt/format.h>

namespace swale {
namespace {

constexpr Allowed density_range = {Kind::density, 0.05, 10};
constexpr Allowed surcharge_range = {Kind::angle, 0, 45};
constexpr Allowed free_edge_range = {Kind::length, 0, 2000};
constexpr Allowed from_range = {Kind::length, 0, 100000};
constexpr double least_fill = 0.01, highest_fill = 1.5;

void read_amount(CaseTable& table, const TransitionLayout& layout, Bulk& bulk) {
    bulk.fill = table.number("fill", least_fill, highest_fill).value_or(bulk.fill);
    bulk.free_edge = table.quantity("free_edge", free_edge_range);
    if (!bulk.free_edge) return;
    if (table.has("fill")) table.reject("free_edge", "both fill and free_edge are given", "one of both");
    if (2 * *bulk.free_edge >= layout.belt_width)
        table.reject("free_edge", "it leaves nothing of the belt", "less than half the belt's width");
}

/// A trough that goes on without end goes on loaded.
void check_from(CaseTable& table, const TransitionLayout& layout, const Bulk& bulk) {
    const double last = layout.distance + (layout.first_sets() - 1) * layout.trough.spacing;
    if (bulk.from && *bulk.from > last)
        table.reject("from", "the load begins behind the last full set of the model",
                     fmt::format("up to {} mm; three sets are modelled at least unless trough.sets says otherwise", last));
}

void check_support(CaseTable& file, const TransitionLayout& layout) {
    if (layout.trough.support == Support::held)
        file.reject("load", "a held trough carries no load", "trough.support = \"rolls\", or no [load]");
}

}  // namespace

std::optional<Bulk> read_load(CaseTable& file, const TransitionLayout& layout) {
    CaseTable table = file.table("load", false);
    if (!file.has("load")) return {};
    Bulk bulk;
    bulk.density = table.required_quantity("density", density_range);
    bulk.surcharge = table.required_quantity("surcharge", surcharge_range);
    read_amount(table, layout, bulk);
    bulk.from = table.quantity("from", from_range);
    check_from(table, layout, bulk);
    check_support(file, layout);
    table.finish();
    return bulk;
}

}  // namespace swale
