#pragma once

#include "io/wear/wear_report.h"

#include <string>

namespace swale {

/// SVG of a surveyed roll: above what was seen on it, below it the contact that each explanation of `shown` predicts, with the
/// measured depths over it. Left is +y.
std::string roll_drawing(const WearReport& report, int roll, const std::vector<Explanation>& shown);

/// SVG of a belt on the roll, gap exaggerated, and the force it presses with.
std::string pressure_drawing(const WearReport& report, const ExamplePressure& example);

}  // namespace swale
