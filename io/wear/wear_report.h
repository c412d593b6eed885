#pragma once

#include "io/wear/transition_advice.h"
#include "io/wear_survey.h"
#include "solver/wear_diagnosis.h"

#include <optional>
#include <string>
#include <vector>

namespace swale {

/// What one belt of a kind would press on this conveyor's return rolls with: for the page's pictures.
struct ExamplePressure {
    std::string name;
    RollContact contact;
    double offset = 0;  ///< of the belt's centre line from the roll's middle [mm]
};

/// One reading of wear, all outputs are written from it.
struct WearReport {
    WearSurveyFile file;
    WearDiagnosis diagnosis;
    std::vector<ExamplePressure> examples;
    std::optional<TransitionAdvice> transition;
};

/// The six belts of the pictures: flat, cupped either way, creased, creased on one side, off the middle.
std::vector<ExamplePressure> example_pressures(const WearSurvey& survey);

/// "JUNCTION FAILURE: ...", "CAN'T TELL: ..."
std::string headline(const WearReport& report);

/// Explanations but the last, the likeliest first.
std::vector<Explanation> ranked(const WearDiagnosis& diagnosis);

/// The three explanations that are shown side by side, the likeliest first: creased or both, cupped, flat or mistracked, the
/// likelier of each pair.
std::vector<Explanation> three_explanations(const WearDiagnosis& diagnosis);

/// Fitted values in sentences: cupping, creases, offsets, stiffness.
std::vector<std::string> fitted_values(const WearReport& report);

/// "+420 mm" or "middle"
std::string place_text(double y);

/// What would decide between the two likeliest, in a sentence: a place on a roll or, where none would, the belt itself.
std::string further_look_text(const WearReport& report);

/// What a further look would do: test a verdict or decide.
std::string further_look_title(const WearDiagnosis& diagnosis);

/// What follows for belt, tracking and transition; each with its grade where it is practice.
std::vector<std::string> what_follows(const WearReport& report);

}  // namespace swale
