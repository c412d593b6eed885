#include "io/chart/distance_map.h"

#include "io/picture/axes.h"
#include "io/picture/line_chart.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace swale {

namespace {

constexpr double width = 760, height = 380, most_shown = 1.6;

ChartFrame frame_of(const DistanceMap& map) {
    const GridField& field = map.utilisation;
    return {{66, 46, width - 24, height - 64}, field.x.front(), field.x.back(), field.y.front(), field.y.back()};
}

ColourScale scale_of(const GridField& field) {
    return colour_scale(std::min(field.values.minCoeff(), 0.9), std::clamp(field.values.maxCoeff(), 1.1, most_shown), false);
}

std::vector<Eigen::Vector2d> on_sheet(const std::vector<Eigen::Vector2d>& line, const ChartFrame& frame) {
    std::vector<Eigen::Vector2d> points;
    for (const Eigen::Vector2d& point : line) points.emplace_back(frame.x(point.x()), frame.y(point.y()));
    return points;
}

// Its value stands on the line's middle.
void draw_contour(const GridField& field, double value, const Pen& pen, const ChartFrame& frame, Drawing& drawing) {
    for (const auto& line : contour_lines(field, value)) {
        const auto points = on_sheet(line, frame);
        if (points.size() < 2) continue;
        drawing.add(Stroke{points, {ink::paper, pen.width + 2}, frame.plot});
        drawing.add(Stroke{points, pen, frame.plot});
        const Eigen::Vector2d at = points[points.size() / 2] + Eigen::Vector2d(0, 4);
        drawing.add(Words{at, fmt::format("{:.3g}", value), small_size, Anchor::middle, pen.colour, value == 1, true});
    }
}

void draw_contours(const GridField& field, const ColourScale& scale, const ChartFrame& frame, Drawing& drawing) {
    for (int band = 1; band <= scale.bands; ++band)
        if (std::abs(scale.boundary(band) - 1) > 1e-6)
            draw_contour(field, scale.boundary(band), {ink::text, 0.8}, frame, drawing);
    draw_contour(field, 1, {ink::alarm, 2}, frame, drawing);
}

void draw_required(const DistanceMap& map, const ChartFrame& frame, Drawing& drawing) {
    const auto points = on_sheet(map.required, frame);
    drawing.add(Stroke{points, {ink::paper, 4.5}, frame.plot});
    drawing.add(Stroke{points, {ink::text, 2.2, {8, 4}}, frame.plot});
    const double y = height - 8, x = frame.plot.left;
    drawing.add(Stroke{{{x, y - 4}, {x + 30, y - 4}}, {ink::text, 2.2, {8, 4}}});
    drawing.add(Words{{x + 36, y}, "from here on every limit holds", small_size});
    drawing.add(Stroke{{{x + 250, y - 4}, {x + 280, y - 4}}, {ink::alarm, 2}});
    drawing.add(Words{{x + 286, y}, "edge utilisation 1, its error on top", small_size});
}

}  // namespace

Drawing draw(const DistanceMap& map) {
    const GridField& field = map.utilisation;
    const ChartFrame frame = frame_of(map);
    const ColourScale scale = scale_of(field);
    Drawing drawing{width, height, map.title,
                    fmt::format("Edge utilisation over distance and {}, from {:.3g} to {:.3g}.", map.y_label,
                                field.values.minCoeff(), field.values.maxCoeff())};
    draw_axes(frame, {"distance", "belt widths"}, {map.y_label, map.y_unit}, drawing);
    drawing.add(Patchwork{frame.plot, painted(field, frame, 1, [&](double value, int, int) { return scale.at(value); })});
    draw_contours(field, scale, frame, drawing);
    if (map.required.size() > 1) draw_required(map, frame, drawing);
    return drawing;
}

}  // namespace swale
