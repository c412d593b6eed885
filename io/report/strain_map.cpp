#include "io/report/strain_map.h"

#include "io/report/rolls_below.h"
#include "io/report/set_places.h"
#include "io/report/view_fields.h"
#include "io/terminal/plain_text.h"

#include <fmt/format.h>

namespace swale {

namespace {

GridField grid_field(const StateResult& state, const ViewField& field) {
    const BeltSurface& surface = state.surface;
    GridField grid{{}, {}, Eigen::MatrixXd(surface.along, surface.across)};
    for (int i = 0; i < surface.along; ++i) grid.x.push_back(surface.points[static_cast<size_t>(i) * surface.across].x);
    for (int j = 0; j < surface.across; ++j) grid.y.push_back(surface.points[static_cast<size_t>(j)].y);
    for (int i = 0; i < surface.along; ++i)
        for (int j = 0; j < surface.across; ++j)
            grid.values(i, j) = field.value(state, static_cast<size_t>(i) * surface.across + j);
    return grid;
}

}  // namespace

FieldMap strain_map(const RunRecord& record, const StateResult& state) {
    const ViewField& field = view_fields().front();
    const FieldRange range = range_of(field, state, held_lines(record.transition.layout, state));
    FieldMap map{"Longitudinal strain on the flattened belt, " + state.name, field.name, field.unit, grid_field(state, field),
                 colour_scale(range.low, range.high, false)};
    for (const SetPlace& set : set_places(state)) map.sets.push_back({set.name, set.x});
    for (const double junction : record.transition.layout.junctions())
        for (const double side : {1.0, -1.0}) map.junctions.push_back({"junction", side * junction});
    const double radius = record.transition.layout.trough.roll_diameter / 2;
    for (const SetPlace& set : set_places(state))
        for (const RollBelow& roll : rolls_below(record.transition))
            map.rolls.push_back({set.x - radius, roll.from, set.x + radius, roll.to});
    const Reading& peak = state.edge_strain_max;
    map.peak = MapPoint{significant(100 * peak.value) + " % at the edge, the most", peak.x, peak.y};
    for (const Judgement& judgement : record.result.criteria)
        if (judgement.state == state.name && judgement.name == "edge strain" && judgement.limit)
            map.limit = Level{fmt::format("limit of the edge strain, {} %", significant(100 * *judgement.limit)),
                              100 * *judgement.limit};
    return map;
}

}  // namespace swale
