#include "io/report/view_fields.h"

#include <algorithm>
#include <cmath>

namespace swale {

namespace {

/// The larger principal value of strains in Voigt order, shear doubled.
double principal(const Eigen::Vector3d& strain) {
    const double mean = (strain[0] + strain[1]) / 2, half = (strain[0] - strain[1]) / 2;
    return mean + std::hypot(half, strain[2] / 2);
}

const SurfacePoint& at(const StateResult& state, size_t point) {
    return state.surface.points[point];
}

}  // namespace

const std::vector<ViewField>& view_fields() {
    using State = const StateResult&;
    static const std::vector<ViewField> fields = {
        {"strain", "longitudinal strain", "%", false, false, [](State s, size_t k) { return 100 * at(s, k).strain; }},
        {"surface", "surface strain, larger face", "%", false, false,
         [](State s, size_t k) { return 100 * std::max(principal(at(s, k).top_strain), principal(at(s, k).bottom_strain)); }},
        {"tension", "tension along", "N/mm", false, false, [](State s, size_t k) { return at(s, k).force[0]; }},
        {"curvature", "curvature across", "1/m", true, false, [](State s, size_t k) { return 1e3 * at(s, k).curvature[1]; }},
        {"pressure", "contact pressure", "MPa", false, false, [](State s, size_t k) { return at(s, k).contact_pressure; },
         [](State) { return true; }, 0.5, 30},
        {"mode_symmetric", "wrinkling mode, symmetric: motion up", "of its largest", true, false,
         [](State s, size_t k) { return s.mode_symmetric->motion[k].z(); },
         [](State s) { return s.mode_symmetric.has_value(); }},
        {"mode_antisymmetric", "wrinkling mode, antisymmetric: motion up", "of its largest", true, true,
         [](State s, size_t k) { return s.mode_antisymmetric->motion[k].z(); },
         [](State s) { return s.mode_antisymmetric.has_value(); }},
    };
    return fields;
}

std::vector<double> held_lines(const TransitionLayout& layout, const StateResult& state) {
    std::vector<double> lines;
    for (const Station& station : layout.stations)
        if (station.support == Support::held) lines.push_back(station.at);
    if (layout.trough.support == Support::held && !state.surface.points.empty()) lines.push_back(state.surface.points.back().x);
    return lines;
}

FieldRange range_of(const ViewField& field, const StateResult& state, const std::vector<double>& held) {
    FieldRange range{INFINITY, -INFINITY};
    for (size_t k = 0; k < state.surface.points.size(); ++k) {
        const double x = state.surface.points[k].x;
        const auto near_it = [&](double line) { return std::abs(x - line) < state.excluded; };
        if (x < state.excluded || std::ranges::any_of(held, near_it)) continue;
        const double value = field.value(state, k);
        range.low = std::min(range.low, value);
        range.high = std::max(range.high, value);
    }
    return range.low <= range.high ? range : FieldRange{};
}

}  // namespace swale
