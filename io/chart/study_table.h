#pragma once

#include "io/chart/required_distance.h"

#include <filesystem>
#include <map>
#include <string>
#include <vector>

namespace swale {

/// One case of a study as a chart sees it.
struct ChartedCase {
    std::vector<std::string> labels;  ///< one an axis
    double width = 0;                 ///< of the belt [mm]; NaN where the case could not be read
    DistanceRow row;
    std::map<std::string, double> hand_methods;  ///< distance that each asks for [mm]; NaN: it gives none
};

/// What a study's database says of its cases.
struct StudyTable {
    std::string title;
    std::vector<std::string> axes, hand_methods;  ///< in the order of the study, of the screening
    std::vector<ChartedCase> cases;

    /// Place of an axis among `axes`; axes.size() if there is none of that name.
    std::size_t axis(const std::string& name) const;
};

/// Reads a database that `swale study` wrote. Throws FileError.
StudyTable read_study_table(const std::filesystem::path& path);

}  // namespace swale
