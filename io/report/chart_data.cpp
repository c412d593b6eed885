#include "io/report/chart_data.h"

#include "io/picture/simplified.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace swale {

namespace {

using Json = nlohmann::ordered_json;

Json rounded(const std::vector<double>& values) {
    Json numbers = Json::array();
    for (const double value : values)
        numbers.push_back(std::isfinite(value) ? Json(std::stod(fmt::format("{:.5g}", value))) : Json(nullptr));
    return numbers;
}

// Without points that a straight line tells to 1/10000 of the axis; a line with gaps stays as it is.
Series thinned(const Series& series, double range) {
    std::vector<Eigen::Vector2d> line;
    for (std::size_t k = 0; k < series.x.size(); ++k) line.emplace_back(series.x[k], series.y[k]);
    const bool whole = std::ranges::all_of(series.y, [](double y) { return std::isfinite(y); });
    if (!whole || !std::ranges::is_sorted(series.x)) return series;
    Series thin{series.name, {}, {}};
    for (const Eigen::Vector2d& point : simplified(line, 1e-4 * range)) {
        thin.x.push_back(point.x());
        thin.y.push_back(point.y());
    }
    return thin;
}

}  // namespace

Json chart_data(const LineChart& chart) {
    const ChartFrame frame = frame_of(chart);
    Json series = Json::array();
    for (const Series& given : chart.series) {
        const Series line = thinned(given, frame.y_high - frame.y_low);
        series.push_back({{"name", line.name}, {"x", rounded(line.x)}, {"y", rounded(line.y)}});
    }
    return {{"plot", {frame.plot.left, frame.plot.top, frame.plot.right, frame.plot.bottom}},
            {"x", {frame.x_low, frame.x_high}},
            {"y", {frame.y_low, frame.y_high}},
            {"xName", chart.x_label},
            {"xUnit", chart.x_unit},
            {"yUnit", chart.y_unit},
            {"series", series}};
}

}  // namespace swale
