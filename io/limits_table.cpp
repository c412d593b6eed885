#include "io/limits_table.h"

#include "materials/allowables.h"

namespace swale {
namespace {

constexpr Allowed edge_strain_range = {Kind::percentage, 0.001, 20};
constexpr Allowed junction_strain_range = {Kind::percentage, 0.001, 100};
constexpr Allowed tension_min_range = {Kind::force_per_length, -1000, 1000};
constexpr Allowed lift_off_range = {Kind::length, 0, 1000};
constexpr Allowed roll_force_range = {Kind::force, 0.001, 1000};

Limit from(const Allowable& allowable) {
    return {allowable.value, allowable.advisory, allowable.source};
}

/// The user's limit is never a mere advice.
void take(const std::optional<double>& given, std::optional<Limit>& limit) {
    if (given) limit = Limit{*given, false, "given in the case file"};
}

/// A share of the rated tension, or the name of the standard whose share it is to be.
void take_edge_tension(CaseTable& table, std::optional<Limit>& limit) {
    const TomlNode* node = table.value("edge_tension");
    if (node == nullptr || node->type != TomlNode::Type::text) return take(table.number("edge_tension", 0.01, 10), limit);
    if (node->text == "ISO 5293")
        limit = from(allowable_edge_tension_iso_5293(Carcass::textile));
    else
        table.reject("edge_tension", "unknown word", "\"ISO 5293\" or a plain number from 0.01 to 10");
}

}  // namespace

Limits default_limits(const Belt& belt) {
    // The limits of tension are the same for all carcasses, so they hold for an unknown one too.
    const Carcass carcass = belt.carcass.value_or(Carcass::textile);
    Limits limits;
    limits.edge_tension = from(allowable_edge_tension(carcass));
    limits.tension_min = from(allowable_tension_min(carcass));
    if (belt.carcass) limits.edge_strain = from(allowable_edge_strain(*belt.carcass));
    return limits;
}

Limits read_limits(CaseTable table, const Limits& otherwise) {
    Limits limits = otherwise;
    take_edge_tension(table, limits.edge_tension);
    take(table.quantity("tension_min", tension_min_range), limits.tension_min);
    take(table.quantity("edge_strain", edge_strain_range), limits.edge_strain);
    take(table.quantity("junction_strain", junction_strain_range), limits.junction_strain);
    take(table.quantity("lift_off", lift_off_range), limits.lift_off);
    take(table.quantity("roll_force", roll_force_range), limits.roll_force);
    table.finish();
    return limits;
}

void check_lift_off(CaseTable limits, const TransitionLayout& layout) {
    if (limits.has("lift_off") && layout.trough.rolls == 2)
        limits.reject("lift_off", "sets of two rolls have no centre roll to lie on", "no such limit, or trough.rolls = 3 or 5");
}

}  // namespace swale
