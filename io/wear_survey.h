#pragma once

#include "materials/belt.h"
#include "solver/wear_survey.h"

#include <filesystem>
#include <optional>
#include <string>

namespace swale {

/// A survey as it was written: its belt, what was seen, and the transition that goes with it.
struct WearSurveyFile {
    std::string title, file, text;
    Belt belt;
    WearSurvey survey;
    std::string stiffness_source;                     ///< where the range of D22 comes from
    double trough_angle = 0;                          ///< [rad]
    std::optional<std::filesystem::path> transition;  ///< case file, as seen from here
};

/// Reads a survey file and the CSV that it names. Throws InputErrors with all mistakes of the file, or else with those of the
/// CSV; FileError if one can't be read.
WearSurveyFile read_wear_survey(const std::filesystem::path& path);

/// The same from its text; `file` is its name in messages.
WearSurveyFile parse_wear_survey(const std::string& text, const std::string& file);

}  // namespace swale
