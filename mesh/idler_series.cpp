#include "mesh/idler_series.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace swale {
namespace {

struct Row {
    double belt_width;   // [mm]
    double roll_length;  // [mm]
};

constexpr std::array<Row, 12> series = {{{400, 160},
                                         {500, 200},
                                         {650, 250},
                                         {800, 315},
                                         {1000, 380},
                                         {1200, 465},
                                         {1400, 530},
                                         {1600, 600},
                                         {1800, 670},
                                         {2000, 750},
                                         {2200, 800},
                                         {2400, 900}}};

}  // namespace

std::optional<double> standard_roll_length(double belt_width) {
    if (!(belt_width >= series.front().belt_width && belt_width <= series.back().belt_width)) return std::nullopt;
    const auto upper = std::lower_bound(series.begin(), series.end(), belt_width,
                                        [](const Row& row, double width) { return row.belt_width < width; });
    if (upper->belt_width == belt_width) return upper->roll_length;
    const auto lower = upper - 1;
    const double share = (belt_width - lower->belt_width) / (upper->belt_width - lower->belt_width);
    return lower->roll_length + share * (upper->roll_length - lower->roll_length);
}

}  // namespace swale
