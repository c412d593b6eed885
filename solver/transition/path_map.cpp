#include "solver/transition/path_map.h"

#include "mesh/belt_grid.h"
#include "mesh/idler_set.h"

#include <algorithm>
#include <cmath>

namespace swale {

std::vector<PathMap::Place> PathMap::places_of(const TransitionLayout& layout, int sets, double underside) {
    std::vector<Place> places;
    const double begin = model_begin(layout, underside), lift = layout.pulley.lift;
    if (begin < 0) places.push_back({begin, begin, lift});
    places.push_back({0, 0, lift});
    for (const IdlerSet& set : idler_sets(layout, sets)) places.push_back({set.path, set.x, set.lift});
    const double end = path_length(layout, sets);
    if (end > places.back().path) places.push_back({end, model_length(layout, sets), 0});
    return places;
}

std::optional<PathMap> PathMap::between(const TransitionLayout& from, const TransitionLayout& to, int sets, double underside) {
    PathMap map;
    map.from_ = places_of(from, sets, underside);
    map.to_ = places_of(to, sets, underside);
    if (map.from_.size() != map.to_.size()) return {};
    return map;
}

namespace {

// The place before, and the share of the way to the next; outside, that of the outermost stretch.
struct Between {
    std::size_t before;
    double share;
};

template <class Place>
Between place_of(const std::vector<Place>& places, double path) {
    const auto above = std::ranges::upper_bound(places, path, {}, &Place::path);
    const auto next = std::clamp<std::ptrdiff_t>(above - places.begin(), 1, std::ssize(places) - 1);
    const Place &a = places[next - 1], &b = places[next];
    return {static_cast<std::size_t>(next - 1), (path - a.path) / (b.path - a.path)};
}

}  // namespace

double PathMap::at(double path) const {
    const Between here = place_of(from_, path);
    return std::lerp(to_[here.before].path, to_[here.before + 1].path, here.share);
}

double PathMap::from(double path) const {
    const Between here = place_of(to_, path);
    return std::lerp(from_[here.before].path, from_[here.before + 1].path, here.share);
}

PathMap::Shift PathMap::shift(double path) const {
    const Between here = place_of(to_, path);
    const auto moved = [&](double Place::*what) {
        return std::lerp(to_[here.before].*what, to_[here.before + 1].*what, here.share) -
               std::lerp(from_[here.before].*what, from_[here.before + 1].*what, here.share);
    };
    return {moved(&Place::x), moved(&Place::z)};
}

}  // namespace swale
