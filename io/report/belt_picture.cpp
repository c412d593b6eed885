#include "io/report/belt_picture.h"

#include "io/picture/scene.h"
#include "io/report/view_fields.h"
#include "io/roll_mesh.h"
#include "io/terminal/plain_text.h"

#include <fmt/format.h>

namespace swale {

namespace {

void add_belt(const StateResult& state, const ViewField& field, double far, Scene& scene) {
    const BeltSurface& surface = state.surface;
    const auto facet = [&](size_t a, size_t b, size_t c) {
        const auto& points = surface.points;
        scene.facets.push_back({{points[a].position, points[b].position, points[c].position},
                                {field.value(state, a), field.value(state, b), field.value(state, c)},
                                true});
    };
    for (int i = 0; i + 1 < surface.along; ++i)
        for (int j = 0; j + 1 < surface.across; ++j) {
            const size_t a = static_cast<size_t>(i) * surface.across + j, b = a + surface.across;
            if (surface.points[a].x > far) continue;
            facet(a, b, b + 1);
            facet(a, b + 1, a + 1);
        }
}

void add_rolls(const std::vector<NamedRoll>& rolls, double far, Scene& scene) {
    for (const auto& [name, roll] : rolls) {
        if (roll.centre.x() > far) continue;
        const RollMesh mesh = roll_mesh(roll, 36, 2);
        for (const std::vector<int>& cell : mesh.cells)
            for (size_t k = 1; k + 1 < cell.size(); ++k)
                scene.facets.push_back({{mesh.points[cell[0]], mesh.points[cell[k]], mesh.points[cell[k + 1]]}});
    }
}

}  // namespace

Drawing belt_picture(const RunRecord& record, const StateResult& state, double width) {
    const TransitionLayout& layout = record.transition.layout;
    const ViewField& field = view_fields().front();
    const FieldRange range = range_of(field, state, held_lines(layout, state));
    const double far = layout.distance + 0.75 * layout.trough.spacing;
    Scene scene{{}, {}, colour_scale(range.low, range.high, field.both_signs)};
    add_belt(state, field, far, scene);
    add_rolls(record.result.rolls, far, scene);
    const double edge = layout.belt_width / 2;
    scene.names = {{{0, edge, 0}, layout.pulley.support == Support::held ? "held end" : "pulley"},
                   {{layout.distance, 0.85 * edge, layout.trough_depth()}, "first full set"}};
    Drawing drawing = draw(scene, "The belt on its rolls, " + state.name, width);
    drawing.description = fmt::format(
        "The belt from the pulley to just behind the first full set, coloured by its longitudinal strain in "
        "bands from {} to {} %.",
        significant(scene.scale.low), significant(scene.scale.high));
    return drawing;
}

}  // namespace swale
