#include "mesh/belt_grid.h"

#include "mesh/graded_breaks.h"
#include "mesh/idler_set.h"
#include "mesh/trough_profile.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

namespace swale {

BoundaryLayers boundary_layers(const Section& section) {
    constexpr double sharp = 0.005;  // strain of an edge that is drawn hard round a roll
    BoundaryLayers layers;
    layers.along = std::sqrt(section.bending(0, 0) / (sharp * section.membrane(0, 0)));
    layers.shear = 100 * std::sqrt(section.membrane(2, 2) / section.membrane(0, 0));
    if (section.foundation > 0) layers.across = std::pow(64 * section.bending(1, 1) / section.foundation, 0.25);
    return layers;
}

double model_length(const TransitionLayout& layout, int sets) {
    if (layout.trough.support == Support::held) return layout.distance;
    return layout.distance + (sets - 0.5) * layout.trough.spacing;
}

double path_length(const TransitionLayout& layout, int sets) {
    const IdlerSet last = idler_sets(layout, sets).back();
    return last.path + model_length(layout, sets) - last.x;
}

double model_begin(const TransitionLayout& layout, double underside) {
    const bool wrapped = layout.pulley.grip == Grip::sliding && layout.pulley.support == Support::rolls;
    return wrapped ? -std::numbers::pi * (layout.pulley.diameter / 2 + underside) : 0;
}

namespace {

// Spans in mm before refinement; the solver halves them at least once. The figures follow from the boundary layer
// sqrt(D/T) of some 50 mm at rolls and pulley, and from the contact patch of 5 to 8 mm.
constexpr double at_rolls = 30, at_pulley = 36, in_transition = 120, in_trough = 400, on_wrap = 90;
constexpr double at_junction = 24, at_edge = 30;
// However soft the belt: below its own thickness a thin-shell belt has no finer shape.
constexpr double shortest_along = 12, shortest_across = 6, shortest_at_edge = 4;

// The sharpest turns are those of the transition. Shorter spans behind the first full set changed no reading by 3e-3.
double at_set(const TransitionLayout& layout, const IdlerSet& set, const BoundaryLayers& layers) {
    if (set.support == Support::held || set.x > layout.distance + 1e-9) return at_rolls;
    return std::clamp(layers.along, shortest_along, at_rolls);
}

// At the end of a roll the pressure rises sharpest.
double at_roll_ends(const BoundaryLayers& layers) {
    return std::clamp(0.8 * layers.across, shortest_across, at_junction);
}

FinePlace at_edges(const TransitionLayout& layout, const BoundaryLayers& layers, double factor) {
    const double stiff = std::clamp(layers.shear, shortest_at_edge, at_edge);
    const bool held = layout.trough.support == Support::held;
    const double size = held ? stiff : std::min(stiff, std::max(layers.across, shortest_across));
    return {layout.belt_width / 2, size * factor, size, 0.6};
}

// A tilted wing roll meets the edge ahead of the set's plane; a centre roll may stand in a plane of its own.
void add_rolls(const TransitionLayout& layout, const IdlerSet& set, double size, std::vector<FinePlace>& places,
               std::vector<double>& pinned) {
    if (set.measured) {
        const auto [first, last] = lengthwise_of(*set.measured);
        places.push_back({set.path + (first + last) / 2, size, 15 + (last - first) / 2, 0.6});
        pinned.push_back(set.path);
        return;
    }
    const double ahead = set.support == Support::held ? 0 : (layout.belt_width / 2 - layout.junction()) * std::sin(set.tilt);
    places.push_back({set.path + ahead / 2, size, 15 + std::abs(ahead) / 2, 0.6});
    pinned.push_back(set.path);
    if (set.support == Support::held) return;
    if (set.offset != 0) places.push_back({set.path + set.offset, size, 15, 0.6});
    for (const double line : {ahead, set.offset})
        if (std::abs(line) > shortest_along / 2) pinned.push_back(set.path + line);
}

CubicBasis lengthwise(const TransitionLayout& layout, const GridRequest& request) {
    const double begin = model_begin(layout, request.underside), end = path_length(layout, request.sets), f = request.factor;
    std::vector<FinePlace> places{{0, at_pulley * f * request.corner, 30, 0.4}};
    std::vector<double> pinned{0};
    if (begin < 0) places.push_back({begin / 2, on_wrap * f, -begin / 2, 0.5});
    for (const IdlerSet& set : idler_sets(layout, request.sets))
        add_rolls(layout, set, at_set(layout, set, request.layers) * f, places, pinned);
    const double first_set = idler_sets(layout, 1).back().path;
    places.push_back({(begin + first_set) / 2, in_transition * f, (first_set - begin) / 2, 0.5});
    return CubicBasis(graded_breaks(begin, end, in_trough * f, places, pinned));
}

// |y| of the belt over the outer ends of the wings; a short wing leaves the edge without a roll.
std::array<double, 2> wing_ends(const TransitionLayout& layout) {
    const Trough& trough = layout.trough;
    const double begin = layout.junctions().back() + trough.roll_gap / 2;
    return {begin + trough.wing_roll, begin + trough.wing_roll_right.value_or(trough.wing_roll)};
}

// The junctions of the full sets and of every station, where the belt bends about a line.
void add_junctions(const TransitionLayout& layout, const GridRequest& request, std::vector<FinePlace>& places,
                   std::vector<double>& pinned) {
    const double f = request.factor;
    if (layout.trough.support == Support::held) {
        const auto [first, last] = held_profile(layout, request.underside).arc_ends();
        const double size = std::min(at_junction, (last - first) / 4);
        places.push_back({(first + last) / 2, size * f, (last - first) / 2 + size, 0.6});
        pinned.push_back(first);
        pinned.push_back(last);
    } else {
        // Slower growth too: where a stiff belt bridges the corner, a soft one first touches the wing roll well behind its end.
        const double size = at_roll_ends(request.layers);
        for (const double junction : layout.junctions()) places.push_back({junction, size * f, 36, 0.6 * size / at_junction});
        for (const double end : wing_ends(layout))
            if (end < layout.belt_width / 2) places.push_back({end, size * f, 12, 0.6 * size / at_junction});
    }
}

CubicBasis crosswise(const TransitionLayout& layout, const GridRequest& request) {
    const double edge = layout.belt_width / 2, longest = std::min(130.0, layout.belt_width / 8) * request.factor;
    std::vector<FinePlace> places{at_edges(layout, request.layers, request.factor * request.corner)};
    std::vector<double> pinned;
    add_junctions(layout, request, places, pinned);
    std::vector<double> breaks = graded_breaks(0, edge, longest, places, pinned);
    if (request.half) return CubicBasis(std::move(breaks));
    std::vector<double> whole;
    for (auto y = breaks.rbegin(); y != breaks.rend(); ++y) whole.push_back(-*y);
    whole.insert(whole.end(), breaks.begin() + 1, breaks.end());
    whole[breaks.size() - 1] = 0;
    return CubicBasis(std::move(whole));
}

}  // namespace

Patch belt_grid(const TransitionLayout& layout, const GridRequest& request) {
    return {lengthwise(layout, request), crosswise(layout, request)};
}

}  // namespace swale
