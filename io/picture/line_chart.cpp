#include "io/picture/line_chart.h"

#include "io/picture/axes.h"
#include "io/terminal/plain_text.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace swale {

namespace {

struct Look {
    Colour colour;
    double width;
    std::vector<double> dashes;
};

const Look& look_of(size_t number) {
    static const std::vector<Look> looks = {{{11, 94, 107}, 2.2, {}},     {{176, 96, 16}, 2, {7, 3}},
                                            {{60, 60, 90}, 2, {2, 3}},    {{150, 40, 90}, 1.8, {9, 3, 2, 3}},
                                            {{80, 120, 40}, 1.8, {4, 2}}, {{110, 110, 110}, 1.6, {12, 4}}};
    return looks[number % looks.size()];
}

size_t look_number(const LineChart& chart, size_t i) {
    return static_cast<size_t>(chart.series[i].look.value_or(static_cast<int>(i)));
}

struct Span {
    double low = INFINITY, high = -INFINITY;

    void take(double value) {
        if (!std::isfinite(value)) return;
        low = std::min(low, value);
        high = std::max(high, value);
    }
    bool empty() const { return !(low <= high); }
};

Span x_span(const LineChart& chart) {
    Span span;
    for (const Series& series : chart.series) std::ranges::for_each(series.x, [&](double x) { span.take(x); });
    if (span.empty()) return {0, 1};
    if (span.low == span.high) span.high += 1;
    return span;
}

/// Round numbers at both ends.
Span y_span(const LineChart& chart) {
    Span span;
    for (const Series& series : chart.series) std::ranges::for_each(series.y, [&](double y) { span.take(y); });
    for (const Level& level : chart.levels) span.take(level.value);
    if (span.empty()) span = {0, 1};
    if (chart.y_low) span.low = *chart.y_low;
    if (chart.y_high) span.high = *chart.y_high;
    const double spread = std::max(span.high - span.low, 1e-9 + 0.02 * std::abs(span.high));
    const double step = round_step(spread / 6);
    return {std::floor((span.low - (chart.y_low ? 0 : 0.03 * spread)) / step + 0.02) * step,
            std::ceil((span.high + 0.03 * spread) / step - 0.02) * step};
}

/// Room on the right for the names of the lines.
double label_room(const LineChart& chart) {
    double room = 24;
    for (const Series& series : chart.series) room = std::max(room, words_width(shortened(series.name, 24), label_size) + 18);
    return room;
}

/// Labels at the right end, moved apart where they would overlap.
struct EndLabel {
    double wanted, y;
    size_t series;
};

std::vector<EndLabel> end_labels(const LineChart& chart, const ChartFrame& frame) {
    std::vector<EndLabel> labels;
    for (size_t i = 0; i < chart.series.size(); ++i) {
        if (chart.series[i].y.empty()) continue;
        const double y = std::clamp(frame.y(chart.series[i].y.back()), frame.plot.top, frame.plot.bottom);
        labels.push_back({y, y, i});
    }
    std::ranges::sort(labels, {}, &EndLabel::wanted);
    constexpr double apart = 15;
    for (size_t i = 1; i < labels.size(); ++i) labels[i].y = std::max(labels[i].y, labels[i - 1].y + apart);
    double below = frame.plot.bottom + 4;
    for (size_t i = labels.size(); i-- > 0;) {
        labels[i].y = std::min(labels[i].y, below);
        below = labels[i].y - apart;
    }
    return labels;
}

void draw_stretches(const LineChart& chart, const ChartFrame& frame, Drawing& drawing) {
    for (const Stretch& stretch : chart.stretches) {
        const double left = frame.x(std::max(stretch.from, frame.x_low)), right = frame.x(std::min(stretch.to, frame.x_high));
        if (right <= left) continue;
        const Box& plot = frame.plot;
        drawing.add(Area{{{left, plot.top}, {right, plot.top}, {right, plot.bottom}, {left, plot.bottom}}, {236, 238, 234}});
        const bool fits = words_width(stretch.label, small_size) < right - left;
        if (fits)
            drawing.add(Words{{(left + right) / 2, plot.top + 14}, stretch.label, small_size, Anchor::middle, ink::quiet});
    }
}

void draw_uprights(const LineChart& chart, const ChartFrame& frame, Drawing& drawing) {
    double free_from = -INFINITY;
    for (const Upright& upright : chart.uprights) {
        if (upright.at < frame.x_low || upright.at > frame.x_high) continue;
        const double x = frame.x(upright.at);
        drawing.add(Stroke{{{x, frame.plot.top}, {x, frame.plot.bottom}}, {ink::quiet, 0.8, {3, 3}}});
        const double half = words_width(upright.label, small_size) / 2;
        if (x - half < free_from) continue;
        drawing.add(Words{{x, frame.plot.top - 6}, upright.label, small_size, Anchor::middle, ink::quiet});
        free_from = x + half + 6;
    }
}

/// The base line nearest above or below a level on which no label stands yet.
double free_line(double y, const std::vector<double>& taken) {
    for (const double at : {y - 4, y + 13, y - 18, y + 27, y - 32, y + 41})
        if (std::ranges::none_of(taken, [&](double other) { return std::abs(other - at) < 13; })) return at;
    return y - 4;
}

void draw_levels(const LineChart& chart, const ChartFrame& frame, Drawing& drawing) {
    std::vector<double> taken;
    for (const Level& level : chart.levels) {
        const double y = frame.y(level.value);
        if (y < frame.plot.top || y > frame.plot.bottom) continue;
        const double left = frame.x(std::max(level.from, frame.x_low)), right = frame.x(std::min(level.to, frame.x_high));
        const Colour colour = level.limit ? ink::alarm : ink::quiet;
        drawing.add(Stroke{{{left, y}, {right, y}},
                           {colour, level.limit ? 1.6 : 1.1, level.limit ? std::vector<double>{} : std::vector<double>{6, 4}}});
        const double at = free_line(y, taken);
        const double half = words_width(level.label, small_size) / 2;
        const double place = level.limit ? right - 6 : std::max((left + right) / 2, frame.plot.left + half + 4);
        drawing.add(
            Words{{place, at}, level.label, small_size, level.limit ? Anchor::end : Anchor::middle, colour, false, true});
        taken.push_back(at);
    }
}

void draw_lines(const LineChart& chart, const ChartFrame& frame, Drawing& drawing) {
    for (size_t i = 0; i < chart.series.size(); ++i) {
        const Series& series = chart.series[i];
        const Look& look = look_of(look_number(chart, i));
        Stroke stroke{{}, {look.colour, look.width, look.dashes}, frame.plot};
        for (size_t k = 0; k < series.x.size(); ++k)
            if (std::isfinite(series.y[k])) stroke.points.emplace_back(frame.x(series.x[k]), frame.y(series.y[k]));
        if (!stroke.points.empty()) drawing.add(stroke);
    }
    for (const EndLabel& label : end_labels(chart, frame)) {
        const Look& look = look_of(look_number(chart, label.series));
        const double right = frame.plot.right;
        if (std::abs(label.y - label.wanted) > 3)
            drawing.add(Stroke{{{right + 1, label.wanted}, {right + 9, label.y - 1}}, {ink::quiet, 0.6}});
        drawing.add(Words{
            {right + 12, label.y + 4}, shortened(chart.series[label.series].name, 24), label_size, Anchor::start, look.colour});
    }
}

/// "edge: 0.69 to 0.94 %" for each line.
std::string description(const LineChart& chart) {
    std::string text = fmt::format("{} [{}] over {} [{}].", chart.y_label, chart.y_unit, chart.x_label, chart.x_unit);
    for (const Series& series : chart.series) {
        Span span;
        std::ranges::for_each(series.y, [&](double y) { span.take(y); });
        if (!span.empty())
            text +=
                fmt::format(" {}: from {} to {} {}.", series.name, significant(span.low), significant(span.high), chart.y_unit);
    }
    return text;
}

}  // namespace

ChartFrame frame_of(const LineChart& chart) {
    const Span x = x_span(chart), y = y_span(chart);
    return {{66, 46, chart.width - label_room(chart), chart.height - 44}, x.low, x.high, y.low, y.high};
}

Drawing draw(const LineChart& chart) {
    const ChartFrame frame = frame_of(chart);
    Drawing drawing{chart.width, chart.height, chart.title, description(chart)};
    draw_stretches(chart, frame, drawing);
    draw_axes(frame, {chart.x_label, chart.x_unit}, {chart.y_label, chart.y_unit}, drawing);
    draw_uprights(chart, frame, drawing);
    draw_levels(chart, frame, drawing);
    draw_lines(chart, frame, drawing);
    return drawing;
}

}  // namespace swale
