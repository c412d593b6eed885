#pragma once

#include "solver/return_roll.h"

#include <string>
#include <vector>

namespace swale {

/// Wear or lost paint measured at a place of a roll; y from the middle of the roll, positive to the left [mm].
struct DepthReading {
    double y = 0;
    double depth = 0;  ///< [mm], not negative
};

enum class Mark { contact, none, unsure };

/// A stretch of a roll that is worn or bright all over, not at all, or hard to say [mm].
struct MarkedBand {
    double from = 0, to = 0;  ///< from < to
    Mark mark = Mark::unsure;
};

struct SurveyedRoll {
    std::string name;
    std::vector<DepthReading> depths;
    std::vector<MarkedBand> bands;
};

/// What was seen on the return rolls of one conveyor, and its belt. The return run's numbers hold for all rolls.
struct WearSurvey {
    ReturnRun run;
    double roll_length = 0;  ///< [mm]
    bool carrying_side_down = true;
    double stiffness_low = 0.7, stiffness_high = 1.4;  ///< factors on D22 between which it lies
    std::vector<SurveyedRoll> rolls;
};

/// Depths and bands that say something.
int informative_readings(const SurveyedRoll& roll);

}  // namespace swale
