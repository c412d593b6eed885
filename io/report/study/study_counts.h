#pragma once

#include "io/study/study_record.h"

#include <string>
#include <vector>

namespace swale {

/// Places of cases in StudyRecord::cases.
using CaseList = std::vector<std::size_t>;

struct OutcomeCounts {
    int within = 0, over = 0, not_converged = 0, not_solved = 0;  ///< the last: bad input or a fault

    int all() const { return within + over + not_converged + not_solved; }
    int solved() const { return within + over; }
};
OutcomeCounts count_outcomes(const StudyRecord& record, const CaseList& cases);
CaseList all_cases(const StudyRecord& record);

/// Distinct labels of an axis: by size where they are numbers of one unit, otherwise in the order of the study.
std::vector<std::string> axis_values(const StudyRecord& record, std::size_t axis);

/// Whether each label begins with a number and all have the same unit behind it.
bool numbers_of_one_unit(const std::vector<std::string>& labels);

/// Cases that share a label of an axis, or whose numbers lie in one of equal parts of its range where it has many.
struct AxisPart {
    std::string label;  ///< as print has it
    CaseList cases;
};
std::vector<AxisPart> axis_parts(const StudyRecord& record, std::size_t axis);

/// How often a limit (criterion and state) is the one nearest to be reached or farthest exceeded, most often first.
struct BindingCount {
    std::string limit;
    int count = 0;
};
std::vector<BindingCount> binding_limits(const StudyRecord& record, const CaseList& cases);

/// The limit of which a solved case uses most, its estimated error on top; empty if nothing is judged.
std::string binding_limit(const ChartedCase& charted);
/// The share that it uses; NaN if nothing is judged.
double share_used(const ChartedCase& charted);

/// A hand method against the shell's verdicts, over the solved cases for which it asks for a distance.
struct HandMethodCount {
    std::string name;
    int right_enough = 0, unsafe = 0, wasteful = 0, right_short = 0;

    int all() const { return right_enough + unsafe + wasteful + right_short; }
};
std::vector<HandMethodCount> count_hand_methods(const StudyRecord& record);

}  // namespace swale
