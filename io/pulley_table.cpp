#include "io/pulley_table.h"

namespace swale {
namespace {

constexpr Allowed diameter_range = {Kind::length, 50, 5000};

BeltEnd read_end(CaseTable& table) {
    if (!table.has("end")) table.reject_missing("end", "\"tail\" or \"head\"");
    return table.choice<BeltEnd>("end", {"tail", "head"}).value_or(BeltEnd::tail);
}

}  // namespace

Support read_support(CaseTable& table) {
    return table.choice<Support>("support", {"rolls", "held"}).value_or(Support::rolls);
}

Pulley read_pulley(CaseTable table) {
    Pulley pulley;
    pulley.end = read_end(table);
    pulley.diameter = table.required_quantity("diameter", diameter_range);
    pulley.lift = table.quantity("lift", lift_range).value_or(pulley.lift);
    pulley.grip = table.choice<Grip>("grip", {"stuck", "sliding"}).value_or(pulley.grip);
    pulley.support = read_support(table);
    if (pulley.support == Support::held && pulley.grip == Grip::sliding)
        table.reject("grip", "a held edge can't slide", "\"stuck\", or support = \"rolls\"");
    table.finish();
    return pulley;
}

}  // namespace swale
