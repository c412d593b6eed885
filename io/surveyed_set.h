#pragma once

#include "io/case_table.h"
#include "mesh/idler_set.h"

#include <string>
#include <vector>

namespace swale {

/// What roll ends are measured to: the line of the shell that is turned to the belt, or the axis.
enum class MeasuredTo { shell, axis };

/// One [[survey.set]] as it was written down: heights from the survey's datum [mm].
struct SurveyedSet {
    std::string name;      ///< "station 1", "set 2"
    double at = 0;         ///< x of its plane
    MeasuredSet measured;  ///< contact lines, x from the set's plane, z from the datum; its other members are not set yet
    bool sound = false;    ///< without mistakes

    /// Of its centre roll's contact line, in the middle; of two rolls where their lines, produced, meet.
    double height(double roll_gap) const;
};

/// Reads a set that is one of `drawn`. All mistakes are noted, and the drawn place of a roll says which slips are told: ends
/// swapped, a wrong side, a roll of another length.
SurveyedSet read_surveyed_set(CaseTable& table, const TransitionLayout& layout, const std::vector<IdlerSet>& drawn,
                              MeasuredTo measured_to);

}  // namespace swale
