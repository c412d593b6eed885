#pragma once

#include "solver/wear/shape_table.h"
#include "solver/wear_diagnosis.h"

#include <vector>

namespace swale {

/// How much a belt wanders sideways while it wears a roll, standard deviations [mm], equally likely: from memory, a few
/// hundredths of its width.
inline constexpr double wanders[] = {10, 20, 40};
inline constexpr int wander_count = 3;

/// One belt that could have worn the rolls: a point of the quadrature over what isn't known.
struct BeltHypothesis {
    Explanation explanation = Explanation::flat;
    double weight = 0;                         ///< within its explanation; all of one explanation add up to 1
    double cupping = 0;                        ///< rise / width
    double left_crease = 0, right_crease = 0;  ///< [rad]
    double stiffness = 1;                      ///< factor on D22
    std::vector<Exposure> exposure;            ///< one a wander
};

/// Points of the quadrature over rise and angle stand for values up to so much above and below theirs, as a factor.
inline constexpr double half_a_point = 1.15;

/// How likely each explanation is before anyone looks: the five belts alike, and a tenth for none of them. An assumption.
double prior_of(Explanation explanation);

/// The points for all belts; `mistracked` has those of `flat`.
std::vector<BeltHypothesis> belt_hypotheses(const WearSurvey& survey, const ShapeTable& table);

}  // namespace swale
