#pragma once

#include "io/chart/axis_choice.h"

#include <filesystem>
#include <ostream>
#include <string>

namespace swale {

struct ChartRequest {
    std::filesystem::path database;  ///< of a study
    std::filesystem::path out = {};  ///< folder; empty: `<stem of the database>-charts` in the current folder
    AxisNames axes = {};
    std::string pictures = "svg";  ///< "svg", "png", "pdf" with commas between, or "none"
};

/// `swale chart`: design charts of a study into a folder: charts.csv and a picture of each chart, maps.csv and a picture of
/// each map. Returns 0. Throws BadQuantity for a name that is no axis of the study; FileError.
int run_chart(const ChartRequest& request, std::ostream& answer);

}  // namespace swale
