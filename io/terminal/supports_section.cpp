#include "io/terminal/supports_section.h"

#include "io/terminal/plain_text.h"
#include "io/terminal/state_table.h"
#include "io/verdict.h"

#include <algorithm>

namespace swale {

namespace {

/// Full sets behind the first stand in the files alone.
bool is_later_set(const std::string& name) {
    return name.starts_with("set ") && name != "set 1" && !name.starts_with("set 1 ");
}

std::string cell(const StateResult& state, const std::string& name) {
    for (const SupportForce& support : state.supports) {
        if (support.name != name) continue;
        const bool off = support.lift_off.value_or(0) > 0;
        return off ? "off " + significant(*support.lift_off, 2) + " mm" : significant(support.force.norm() / 1e3);
    }
    return "-";
}

}  // namespace

std::string supports_section(const TransitionResult& result) {
    const auto solved = std::find_if(result.states.begin(), result.states.end(), converged);
    if (solved == result.states.end() || solved->supports.empty()) return {};
    std::vector<StateLine> lines;
    for (const SupportForce& support : solved->supports)
        if (!is_later_set(support.name))
            lines.push_back({{support.name}, [name = support.name](const StateResult& state) { return cell(state, name); }});
    const bool more = lines.size() < solved->supports.size();
    return state_table({"Forces on the belt [kN]"}, lines, result.states) + (more ? "  further sets: see summary.json\n" : "");
}

}  // namespace swale
