#include "io/tension_table.h"

#include "io/limits_table.h"

#include <algorithm>

namespace swale {
namespace {

constexpr Allowed total_range = {Kind::force, 0.001, 20000};
constexpr Allowed elongation_range = {Kind::length, -100, 1000};

void check_far_end(CaseTable& table, Support trough) {
    const char* either = "total, or with a held trough elongation";
    if (table.has("total") && table.has("elongation"))
        table.reject("elongation", "both total and elongation are given", either);
    if (!table.has("total") && !table.has("elongation")) table.reject_missing("total", either);
    if (table.has("elongation") && trough != Support::held)
        table.reject("elongation", "an elongation is for a held trough only", "total, or trough.support = \"held\"");
}

bool read_loaded(CaseTable& table, bool has_load) {
    const bool loaded = table.truth("loaded").value_or(has_load);
    if (loaded && !has_load) table.reject("loaded", "there is no load to bear", "a table [load], or loaded = false");
    return loaded && has_load;
}

TensionState read_state(CaseTable& table, Support trough, const Limits& limits, bool has_load) {
    TensionState state;
    state.name = table.required_text("name");
    check_far_end(table, trough);
    state.total = table.quantity("total", total_range);
    state.elongation = table.quantity("elongation", elongation_range);
    if (table.has("limits")) state.limits = read_limits(table.table("limits", false), limits);
    state.loaded = read_loaded(table, has_load);
    table.finish();
    return state;
}

bool is_taken(const std::string& name, const std::vector<TensionState>& states) {
    return std::any_of(states.begin(), states.end(), [&](const TensionState& state) { return state.name == name; });
}

}  // namespace

std::vector<TensionState> read_states(CaseTable& file, Support trough, const Limits& limits, bool has_load) {
    std::vector<TensionState> states;
    for (CaseTable& table : file.tables("tension")) {
        TensionState state = read_state(table, trough, limits, has_load);
        if (!state.name.empty() && is_taken(state.name, states))
            table.reject("name", "another state has this name", "a name for each state");
        states.push_back(state);
    }
    const TomlNode* written = file.value("tension");
    if (written == nullptr || (written->type == TomlNode::Type::array && written->items.empty()))
        file.reject_missing("tension", "at least one state under [[tension]]");
    return states;
}

}  // namespace swale
