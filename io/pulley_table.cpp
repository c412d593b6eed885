#include "io/pulley_table.h"

namespace swale {
namespace {

constexpr Allowed diameter_range = {Kind::length, 50, 5000};

BeltEnd read_end(CaseTable& table) {
    if (!table.has("end")) table.reject_missing("end", "\"tail\" or \"head\"");
    return table.choice<BeltEnd>("end", {"tail", "head"}).value_or(BeltEnd::tail);
}

RunOn read_run_on(CaseTable& table, const Pulley& pulley) {
    const RunOn run_on = table.choice<RunOn>("run_on", {"plane", "steady"}).value_or(RunOn::plane);
    if (run_on == RunOn::plane) return run_on;
    if (pulley.end == BeltEnd::tail)
        table.reject("run_on", "a belt runs off a tail pulley, not on", "\"plane\", or end = \"head\"");
    if (pulley.grip == Grip::sliding)
        table.reject("run_on", "a sliding belt has no line at which it sticks", "\"plane\", or grip = \"stuck\"");
    if (pulley.support == Support::held)
        table.reject("run_on", "a held edge does not move", "\"plane\", or support = \"rolls\"");
    return run_on;
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
    pulley.run_on = read_run_on(table, pulley);
    table.finish();
    return pulley;
}

}  // namespace swale
