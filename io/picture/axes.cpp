#include "io/picture/axes.h"

namespace swale {

namespace {

std::string in_print(const AxisName& axis) {
    return axis.unit.empty() ? axis.label : axis.label + " [" + axis.unit + "]";
}

}  // namespace

void draw_axes(const ChartFrame& frame, const AxisName& x, const AxisName& y, Drawing& drawing) {
    const Box& plot = frame.plot;
    const std::vector<double> rows = round_steps(frame.y_low, frame.y_high, 6),
                              columns = round_steps(frame.x_low, frame.x_high, 8);
    const std::vector<std::string> row_labels = step_labels(rows), column_labels = step_labels(columns);
    for (size_t i = 0; i < rows.size(); ++i) {
        const double at = frame.y(rows[i]);
        drawing.add(Stroke{{{plot.left, at}, {plot.right, at}}, {ink::faint, 1}});
        drawing.add(Words{{plot.left - 8, at + 4}, row_labels[i], small_size, Anchor::end, ink::quiet});
    }
    for (size_t i = 0; i < columns.size(); ++i) {
        const double at = frame.x(columns[i]);
        drawing.add(Stroke{{{at, plot.bottom}, {at, plot.bottom + 5}}, {ink::quiet, 1}});
        drawing.add(Words{{at, plot.bottom + 18}, column_labels[i], small_size, Anchor::middle, ink::quiet});
    }
    drawing.add(Stroke{{{plot.left, plot.bottom}, {plot.right, plot.bottom}}, {ink::quiet, 1}});
    drawing.add(Words{{4, 16}, in_print(y), label_size, Anchor::start, ink::text, true});
    drawing.add(Words{{plot.left, plot.bottom + 36}, in_print(x), label_size, Anchor::start, ink::text, true});
}

}  // namespace swale
