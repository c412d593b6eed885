#pragma once

#include "benchmarks/campaign/draw.h"
#include "solver/wear_diagnosis.h"

#include <string>

namespace swale::benchmark {

/// What a synthetic survey was made from.
struct WearTruth {
    Explanation explanation = Explanation::flat;
    BeltMemory memory;
    bool solved = false;  ///< the belt found its equilibrium
    std::string reason;
};

struct RandomSurvey {
    WearSurvey survey;
    WearTruth truth;
};

/// One of the conveyors that are surveyed: belts of the catalogue 650 to 2000 mm wide, 4 to 25 N/mm, rolls 2 to 4 m apart.
/// Without readings. `belts` of them there are.
inline constexpr int surveyed_conveyors = 12;
WearSurvey conveyor(int index);

/// A survey of a conveyor, whose rolls wear with the pressure to a power that the diagnosis takes to be 1: a belt solved by the
/// shell on a finer grid than the diagnosis has, with its own stiffness within the range, tension up to 15 % off what the
/// survey says, and memory that lies on no node; one to four rolls of which parts are missing, depths with noise of their own
/// or marks with mistakes of their own.
RandomSurvey random_survey(const WearSurvey& conveyor, Draw& draw, double power = 1);

}  // namespace swale::benchmark
