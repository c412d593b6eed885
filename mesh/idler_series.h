#pragma once

#include <optional>

namespace swale {

/// Length of one roll of a three-roll set for a belt width, both in mm. Series of ISO 1537 / DIN 22107 and the trade, from
/// memory: sure up to 2000 mm, fairly sure above. Between two widths of the series the length is interpolated, as for belts
/// made to inches (own rule). Empty outside 400 to 2400 mm: then the length has to be given.
std::optional<double> standard_roll_length(double belt_width);

}  // namespace swale
