#include "io/picture/simplified.h"

#include <cmath>
#include <utility>

namespace swale {

namespace {

using Point = Eigen::Vector2d;

// How far a point lies off the chord along y.
double upright(const Point& from, const Point& to, const Point& point) {
    const double span = to.x() - from.x();
    return std::abs(point.y() - (span > 0 ? from.y() + (point.x() - from.x()) / span * (to.y() - from.y()) : from.y()));
}

// The point between two that is farthest off their chord, and how far.
std::pair<std::size_t, double> farthest(const std::vector<Point>& line, std::size_t from, std::size_t to) {
    std::pair<std::size_t, double> most{from, 0};
    for (std::size_t k = from + 1; k < to; ++k) {
        const double off = upright(line[from], line[to], line[k]);
        if (off > most.second) most = {k, off};
    }
    return most;
}

}  // namespace

std::vector<Point> simplified(const std::vector<Point>& line, double off) {
    if (line.size() < 3) return line;
    std::vector<bool> kept(line.size(), false);
    kept.front() = kept.back() = true;
    std::vector<std::pair<std::size_t, std::size_t>> open{{0, line.size() - 1}};
    while (!open.empty()) {
        const auto [from, to] = open.back();
        open.pop_back();
        const auto [at, far] = farthest(line, from, to);
        if (far <= off) continue;
        kept[at] = true;
        open.emplace_back(from, at);
        open.emplace_back(at, to);
    }
    std::vector<Point> points;
    for (std::size_t k = 0; k < line.size(); ++k)
        if (kept[k]) points.push_back(line[k]);
    return points;
}

}  // namespace swale
