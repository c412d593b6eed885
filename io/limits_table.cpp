#include "io/limits_table.h"

#include "materials/allowables.h"

namespace swale {
namespace {

constexpr Allowed edge_strain_range = {Kind::percentage, 0.001, 20};
constexpr Allowed junction_strain_range = {Kind::percentage, 0.001, 100};
constexpr Allowed tension_min_range = {Kind::force_per_length, -1000, 1000};
constexpr Allowed lift_off_range = {Kind::length, 0, 1000};

Limit from(const Allowable& allowable) {
    return {allowable.value, allowable.advisory, allowable.source};
}

/// The user's limit; it is never a mere advice.
std::optional<Limit> given(const std::optional<double>& value) {
    return value ? std::optional(Limit{*value, false, "given in the case file"}) : std::nullopt;
}

std::optional<Limit> default_edge_strain(const Belt& belt) {
    return belt.carcass ? std::optional(from(allowable_edge_strain(*belt.carcass))) : std::nullopt;
}

}  // namespace

Limits read_limits(CaseTable table, const Belt& belt) {
    // The limits of tension are the same for all carcasses, so they hold for an unknown one too.
    const Carcass carcass = belt.carcass.value_or(Carcass::textile);
    Limits limits;
    limits.edge_tension = given(table.number("edge_tension", 0.01, 10)).value_or(from(allowable_edge_tension(carcass)));
    limits.tension_min = given(table.quantity("tension_min", tension_min_range)).value_or(from(allowable_tension_min(carcass)));
    limits.edge_strain = given(table.quantity("edge_strain", edge_strain_range));
    if (!limits.edge_strain) limits.edge_strain = default_edge_strain(belt);
    limits.junction_strain = given(table.quantity("junction_strain", junction_strain_range));
    limits.lift_off = given(table.quantity("lift_off", lift_off_range));
    table.finish();
    return limits;
}

void check_lift_off(CaseTable limits, const TransitionLayout& layout) {
    if (limits.has("lift_off") && layout.trough.rolls == 2)
        limits.reject("lift_off", "sets of two rolls have no centre roll to lie on", "no such limit, or trough.rolls = 3 or 5");
}

}  // namespace swale
