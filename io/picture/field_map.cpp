#include "io/picture/field_map.h"

#include "io/picture/axes.h"
#include "io/terminal/plain_text.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace swale {

namespace {

constexpr double map_height = 240, legend_width = 104;

// Beyond the scale its end's colour with oblique lines on it.
Colour hatched(const ColourScale& scale, double value, int place) {
    const double slack = 1e-9 * (scale.high - scale.low);
    const bool above = value > scale.high + slack, below = value < scale.low - slack;
    if ((above || below) && place % 9 < 3) return above ? ink::text : ink::paper;
    return scale.at(value);
}

Raster bands(const FieldMap& map, const ChartFrame& frame) {
    constexpr double fineness = 1.5;
    return painted(map.values, frame, fineness,
                   [&](double value, int row, int column) { return hatched(map.scale, value, row + column); });
}

std::vector<Eigen::Vector2d> on_sheet(const std::vector<Eigen::Vector2d>& line, const ChartFrame& frame) {
    std::vector<Eigen::Vector2d> points;
    for (const Eigen::Vector2d& point : line) {
        const Eigen::Vector2d next(frame.x(point.x()), frame.y(point.y()));
        if (points.empty() || (next - points.back()).norm() > 0.7) points.push_back(next);
    }
    return points;
}

void draw_contours(const FieldMap& map, const ChartFrame& frame, Drawing& drawing) {
    for (int band = 1; band < map.scale.bands; ++band)
        for (const auto& line : contour_lines(map.values, map.scale.boundary(band))) {
            const auto points = on_sheet(line, frame);
            if (points.size() > 2) drawing.add(Stroke{points, {ink::paper, 0.6}, frame.plot});
        }
    if (!map.limit) return;
    for (const auto& line : contour_lines(map.values, map.limit->value)) {
        const auto points = on_sheet(line, frame);
        if (points.size() > 1) drawing.add(Stroke{points, {ink::paper, 4}, frame.plot});
        if (points.size() > 1) drawing.add(Stroke{points, {ink::alarm, 2}, frame.plot});
    }
}

void draw_rolls(const FieldMap& map, const ChartFrame& frame, Drawing& drawing) {
    for (const auto& [x_from, y_from, x_to, y_to] : map.rolls) {
        const double left = frame.x(x_from), right = frame.x(x_to), top = frame.y(y_to), bottom = frame.y(y_from);
        for (const Pen& pen : {Pen{ink::paper, 2.6}, Pen{ink::text, 0.9}})
            drawing.add(Stroke{{{left, top}, {right, top}, {right, bottom}, {left, bottom}, {left, top}}, pen, frame.plot});
    }
}

void draw_lines(const FieldMap& map, const ChartFrame& frame, Drawing& drawing) {
    for (const Upright& junction : map.junctions) {
        const double y = frame.y(junction.at);
        for (const Pen& pen : {Pen{ink::paper, 2.6}, Pen{ink::text, 1.1, {6, 4}}})
            drawing.add(Stroke{{{frame.plot.left, y}, {frame.plot.right, y}}, pen});
    }
    for (const Upright& set : map.sets) {
        if (set.at < frame.x_low || set.at > frame.x_high) continue;
        const double x = frame.x(set.at);
        drawing.add(Stroke{{{x, frame.plot.top - 4}, {x, frame.plot.bottom}}, {ink::text, 1.1}});
        drawing.add(Words{{x, frame.plot.top - 8}, set.label, small_size, Anchor::middle, ink::quiet});
    }
}

void draw_peak(const FieldMap& map, const ChartFrame& frame, Drawing& drawing) {
    if (!map.peak || map.peak->x > frame.x_high) return;
    const Eigen::Vector2d at(frame.x(map.peak->x), frame.y(map.peak->y));
    for (const auto& [colour, width] : {std::pair(ink::paper, 4.0), std::pair(ink::text, 1.8)})
        for (const double slope : {1.0, -1.0})
            drawing.add(Stroke{{{at.x() - 6, at.y() - 6 * slope}, {at.x() + 6, at.y() + 6 * slope}}, {colour, width}});
    const bool right = at.x() < frame.plot.right - 200;
    const double down = at.y() < frame.plot.top + 40 ? 44 : -8;
    drawing.add(Words{{at.x() + (right ? 12 : -12), at.y() + down},
                      map.peak->label,
                      12.5,
                      right ? Anchor::start : Anchor::end,
                      ink::text,
                      true,
                      true});
}

void draw_legend(const FieldMap& map, const ChartFrame& frame, Drawing& drawing) {
    const double left = frame.plot.right + 22, right = left + 16;
    std::vector<double> boundaries;
    for (int band = 0; band <= map.scale.bands; ++band) boundaries.push_back(map.scale.boundary(band));
    const std::vector<std::string> labels = step_labels(boundaries);
    const auto at = [&](int band) { return frame.plot.bottom - frame.plot.height() * band / map.scale.bands; };
    for (int band = 0; band < map.scale.bands; ++band)
        drawing.add(Area{{{left, at(band)}, {right, at(band)}, {right, at(band + 1)}, {left, at(band + 1)}},
                         map.scale.at((boundaries[band] + boundaries[band + 1]) / 2)});
    const int every = map.scale.bands > 14 ? 2 : 1;
    for (int band = 0; band <= map.scale.bands; band += every)
        drawing.add(Words{{right + 6, at(band) + 4}, labels[band], small_size, Anchor::start, ink::quiet});
    drawing.add(Words{{map.width - 2, 16}, map.field + " [" + map.unit + "]", label_size, Anchor::end, ink::text, true});
    if (!map.limit) return;
    drawing.add(Stroke{{{frame.plot.left, map_height + 94}, {frame.plot.left + 26, map_height + 94}}, {ink::alarm, 2}});
    drawing.add(Words{{frame.plot.left + 32, map_height + 98}, map.limit->label, small_size, Anchor::start, ink::alarm});
}

std::string description(const FieldMap& map) {
    std::string text =
        fmt::format("{} [{}] on the belt laid flat, {} along by {} mm across; bands from {} to {}.", map.field, map.unit,
                    significant(map.values.x.back()), significant(map.values.y.back() - map.values.y.front()),
                    significant(map.scale.low), significant(map.scale.high));
    if (map.peak) text += fmt::format(" {} at x {:.0f} mm, y {:.0f} mm.", map.peak->label, map.peak->x, map.peak->y);
    return text;
}

}  // namespace

ChartFrame frame_of(const FieldMap& map) {
    return {{66, 46, map.width - legend_width, 46 + map_height},
            map.values.x.front(),
            map.values.x.back(),
            map.values.y.front(),
            map.values.y.back()};
}

Drawing draw(const FieldMap& map) {
    const ChartFrame frame = frame_of(map);
    Drawing drawing{map.width, map_height + 46 + 56, map.title, description(map)};
    draw_axes(frame, {"along the unstretched belt", "mm"}, {"across", "mm"}, drawing);
    drawing.add(Patchwork{frame.plot, bands(map, frame)});
    draw_contours(map, frame, drawing);
    draw_rolls(map, frame, drawing);
    draw_lines(map, frame, drawing);
    draw_peak(map, frame, drawing);
    draw_legend(map, frame, drawing);
    return drawing;
}

}  // namespace swale
