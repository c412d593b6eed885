#include "io/chart/axis_choice.h"

#include "io/near_miss.h"
#include "io/quantity.h"

#include <fmt/format.h>

#include <set>

namespace swale {

namespace {

std::size_t axis_of(const StudyTable& table, const std::string& option, const std::string& name) {
    const std::size_t axis = table.axis(name);
    if (axis == table.axes.size())
        throw BadQuantity(fmt::format("{}: the study has no axis of this name; given \"{}\"; allowed: {}", option, name,
                                      listed(table.axes, true)));
    return axis;
}

// The named axis; without a name the usual one, or else the first that has no part yet; none_left if there is none.
std::size_t part(const StudyTable& table, const std::string& option, const std::string& name, const std::string& usual,
                 const std::set<std::size_t>& taken) {
    if (!name.empty()) {
        const std::size_t axis = axis_of(table, option, name);
        if (taken.contains(axis))
            throw BadQuantity(fmt::format("{}: this axis has another part already; given \"{}\"", option, name));
        return axis;
    }
    if (table.axis(usual) < table.axes.size() && !taken.contains(table.axis(usual))) return table.axis(usual);
    std::size_t axis = 0;
    while (taken.contains(axis)) ++axis;
    return axis;
}

}  // namespace

ChartAxes chart_axes(const StudyTable& table, const AxisNames& request) {
    ChartAxes axes;
    axes.distance = axis_of(table, "--distance", request.distance);
    axes.over = part(table, "--over", request.over, "tension[1].total", {axes.distance});
    if (axes.over == table.axes.size())
        throw BadQuantity("--over: the study varies the distance alone; allowed: a study that varies something else too");
    axes.lines = part(table, "--lines", request.lines, "trough.angle", {axes.distance, axes.over});
    axes.lift = request.lift.empty() ? table.axis("pulley.lift") : axis_of(table, "--lift", request.lift);
    return axes;
}

}  // namespace swale
