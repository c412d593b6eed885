#include "io/report/chart_data.h"

#include <fmt/format.h>

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

}  // namespace

Json chart_data(const LineChart& chart) {
    const ChartFrame frame = frame_of(chart);
    Json series = Json::array();
    for (const Series& line : chart.series)
        series.push_back({{"name", line.name}, {"x", rounded(line.x)}, {"y", rounded(line.y)}});
    return {{"plot", {frame.plot.left, frame.plot.top, frame.plot.right, frame.plot.bottom}},
            {"x", {frame.x_low, frame.x_high}},
            {"y", {frame.y_low, frame.y_high}},
            {"xName", chart.x_label},
            {"xUnit", chart.x_unit},
            {"yUnit", chart.y_unit},
            {"series", series}};
}

}  // namespace swale
