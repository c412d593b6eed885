#pragma once

#include "materials/uncertain_belt.h"
#include "solver/transition.h"

#include <array>
#include <optional>
#include <string>
#include <vector>

namespace swale {

/// A quantity that the study looks at, and what its change is compared with: a strain or tension that may vanish with that of
/// the edge.
struct StudiedQuantity {
    const char* name;
    Reading Readings::*reading;
    Reading Readings::*scale;
};

inline constexpr int studied_quantities = 5;
/// Edge strain, centre strain, edge tension (hence its ratio to the rated one), lowest tension, junction strain.
const std::array<StudiedQuantity, studied_quantities>& all_studied_quantities();

/// A state of one run; without readings it has no solution and `reason` says why.
struct StudiedState {
    std::string name;
    std::optional<Readings> readings;
    std::string reason;
};

/// The case with one belt.
struct StudiedRun {
    std::vector<StudiedState> states;   ///< in the order of the case
    std::vector<std::string> exceeded;  ///< limits that are exceeded, each with its state; advisory ones don't count
};

/// What the range of a number does to a quantity, in the state in which it does most.
struct RangeEffect {
    double swing = 0;  ///< largest less smallest of the three, over the scale's value as given
    std::string state;
    std::optional<double> low, as_given, high;  ///< absent: no solution
};

/// One uncertain number of the belt.
struct StudiedDatum {
    BeltDatum datum;  ///< as given, with its range
    StudiedRun low, high;
    std::array<RangeEffect, studied_quantities> effects;

    double largest_swing() const;
};

struct RangeStudy {
    StudiedRun as_given;
    std::vector<StudiedDatum> data;  ///< largest swing first: what is to be measured first
};

/// Solves the case as it is and once for either end of every uncertain number of its belt, the others as given. Never throws
/// for lack of convergence; a belt without uncertain numbers gives a study without data.
RangeStudy study_ranges(const TransitionCase& transition, const ProgressListener& listener = {});

}  // namespace swale
