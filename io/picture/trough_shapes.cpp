#include "io/picture/trough_shapes.h"

#include "io/picture/axes.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace swale {

namespace {

/// Lowest and highest point of belt and rolls, and the farthest to a side.
struct Reach {
    double low = INFINITY, high = -INFINITY, side = 0;

    void take(const Eigen::Vector2d& point) {
        low = std::min(low, point.y());
        high = std::max(high, point.y());
        side = std::max(side, std::abs(point.x()));
    }
};

Reach reach_of(const TroughShape& shape) {
    Reach reach;
    for (const Eigen::Vector2d& point : shape.belt) reach.take(point);
    for (const auto& roll : shape.rolls)
        for (const Eigen::Vector2d& point : roll) reach.take(point);
    return reach;
}

constexpr double width = 415, title_height = 26, foot = 44, margin = 40, gap = 30;

double depth_of(const TroughShape& shape) {
    const auto [low, high] = std::ranges::minmax(shape.belt, {}, [](const Eigen::Vector2d& point) { return point.y(); });
    return high.y() - low.y();
}

void draw_shape(const TroughShape& shape, const Box& panel, double scale, Drawing& drawing) {
    const Reach reach = reach_of(shape);
    const double middle = (panel.left + panel.right) / 2, ground = panel.top + title_height + scale * reach.high;
    const auto on_sheet = [&](const std::vector<Eigen::Vector2d>& points) {
        std::vector<Eigen::Vector2d> drawn;
        for (const Eigen::Vector2d& point : points) drawn.emplace_back(middle + scale * point.x(), ground - scale * point.y());
        return drawn;
    };
    for (const auto& roll : shape.rolls) drawing.add(Area{on_sheet(roll), {226, 229, 230}, 1, Pen{ink::steel, 1}});
    drawing.add(Stroke{on_sheet(shape.belt), {ink::accent, 2.4}});
    drawing.add(Words{{panel.left + 4, panel.top + 14}, shape.name, label_size, Anchor::start, ink::text, true});
    drawing.add(Words{{panel.right - 4, panel.top + 14},
                      fmt::format("{:.0f} mm deep", depth_of(shape)),
                      small_size,
                      Anchor::end,
                      ink::quiet});
}

/// A bar of a round length.
void draw_scale(double left, double bottom, double scale, Drawing& drawing) {
    const double length = round_step(90 / scale);
    drawing.add(
        Stroke{{{left, bottom - 5}, {left, bottom}, {left + length * scale, bottom}, {left + length * scale, bottom - 5}},
               {ink::quiet, 1.2}});
    drawing.add(Words{{left + length * scale + 8, bottom + 3},
                      fmt::format("{:.0f} mm across and in height", length),
                      small_size,
                      Anchor::start,
                      ink::quiet});
}

}  // namespace

Drawing draw(const std::vector<TroughShape>& shapes, const std::string& title) {
    double side = 1;
    for (const TroughShape& shape : shapes) side = std::max(side, reach_of(shape).side);
    const double scale = (width - margin) / (2 * side);
    Drawing drawing{2 * width + gap, 0, title,
                    "Sections of the belt's carcass with the rolls under it, seen along the belt, to one scale."};
    double top = 0, row_height = 0;
    for (size_t i = 0; i < shapes.size(); ++i) {
        if (i % 2 == 0 && i > 0) top += row_height, row_height = 0;
        const Reach reach = reach_of(shapes[i]);
        const double left = i % 2 == 0 ? 0 : width + gap;
        draw_shape(shapes[i], {left, top, left + width, top}, scale, drawing);
        row_height = std::max(row_height, title_height + scale * (reach.high - reach.low) + 22);
    }
    drawing.height = top + row_height + foot;
    draw_scale(4, drawing.height - foot / 2, scale, drawing);
    return drawing;
}

}  // namespace swale
