#include "io/picture/bar_chart.h"

#include "io/picture/axes.h"
#include "io/terminal/plain_text.h"

#include <fmt/format.h>

#include <algorithm>

namespace swale {

namespace {

constexpr double width = 860, row = 30, left = 236, above = 34;

double longest(const BarChart& chart) {
    double length = chart.mark;
    for (const Bar& bar : chart.bars) length = std::max(length, bar.value);
    return length * 1.02;
}

std::string description(const BarChart& chart) {
    std::string text = fmt::format("{} [{}]; {}.", chart.x_label, chart.x_unit, chart.mark_label);
    for (const Bar& bar : chart.bars) text += fmt::format(" {}: {}.", bar.name, bar.text);
    return text;
}

}  // namespace

Drawing draw(const BarChart& chart) {
    const double bottom = above + row * static_cast<double>(chart.bars.size());
    const ChartFrame frame{{left, above, width - 96, bottom}, 0, longest(chart), 0, 1};
    Drawing drawing{width, bottom + 44, chart.title, description(chart)};
    const std::vector<double> steps = round_steps(0, frame.x_high, 8);
    const std::vector<std::string> labels = step_labels(steps);
    for (size_t i = 0; i < steps.size(); ++i) {
        const double x = frame.x(steps[i]);
        drawing.add(Stroke{{{x, above}, {x, bottom}}, {ink::faint, 1}});
        drawing.add(Words{{x, bottom + 18}, labels[i], small_size, Anchor::middle, ink::quiet});
    }
    double y = above;
    for (const Bar& bar : chart.bars) {
        const double end = frame.x(bar.value);
        const bool over = bar.value > chart.mark;
        drawing.add(Area{{{left, y + 7}, {end, y + 7}, {end, y + row - 7}, {left, y + row - 7}},
                         over ? Colour{176, 96, 16} : Colour{120, 160, 166}});
        drawing.add(Words{{left - 10, y + 19}, shortened(bar.name, 34), label_size, Anchor::end});
        drawing.add(Words{{end + 6, y + 19}, bar.text, small_size, Anchor::start, ink::text, false, true});
        y += row;
    }
    const double mark = frame.x(chart.mark);
    drawing.add(Stroke{{{mark, above - 8}, {mark, bottom}}, {ink::text, 2}});
    drawing.add(Words{{mark, above - 14}, chart.mark_label, small_size, Anchor::middle, ink::text, true});
    drawing.add(Words{
        {frame.plot.right, bottom + 36}, chart.x_label + " [" + chart.x_unit + "]", label_size, Anchor::end, ink::text, true});
    return drawing;
}

}  // namespace swale
