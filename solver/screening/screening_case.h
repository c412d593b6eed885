#pragma once

#include "solver/screening.h"
#include "solver/screening/straight_strips.h"

#include <functional>

namespace swale {

/// A case as the hand methods see it.
struct ScreeningCase {
    const TransitionCase& transition;
    StraightStrips strips;
    double modulus = 0;                     ///< tension per width over strain, free to shrink across [N/mm]
    const TensionState* highest = nullptr;  ///< of the states with a given tension; null without any
    const TensionState* lowest = nullptr;
    double per_width(const TensionState& state) const { return *state.total / strips.width; }  ///< [N/mm]
    /// Of the highest tension in the rated one; absent without either.
    std::optional<double> share_of_rated() const;
};

ScreeningCase screening_case(const TransitionCase& transition);

/// True if the method holds for sets of `fewest` to `most` rolls; otherwise its remark says so.
bool holds_for(const ScreeningCase& screening, int fewest, int most, HandMethod& method);

/// Whether a method that knows plies and cords takes this carcass for cords.
bool counts_as_cords(Carcass carcass);
/// What is to be said of a carcass that is neither; empty of the others.
std::string carcass_remark(Carcass carcass);

/// Shares of a strip's excess over the centre line, in mm^2: what the edge has above the mean and what the slackest strip
/// lacks.
struct Spread {
    double above = 0, below = 0;
};

/// Edge tension that a state may reach [N/mm].
using EdgeAllowed = std::function<double(const TensionState&)>;

/// The distance at which the edge reaches what is allowed or the slackest strip loses its tension, whichever is longer, over
/// all states: M above / L^2 <= allowed - T and M below / L^2 <= T. Sets distance and remark.
void require(const ScreeningCase& screening, const Spread& spread, const EdgeAllowed& edge_allowed, HandMethod& method);

/// Strains at the case's own distance: (T/M) + above / L^2 under the highest tension, (T/M) - below / L^2 under the lowest.
void strain(const ScreeningCase& screening, double edge_above, double centre_below, HandMethod& method);

/// What a method that gives a length alone implies: in a sentence, by how much straight strips of that length stretch the edge
/// beyond the centre.
std::string implied_excess(const ScreeningCase& screening, double distance);

/// One file each.
HandMethod iso_5293(const ScreeningCase& screening);
HandMethod base_length(const ScreeningCase& screening);
HandMethod din_22101(const ScreeningCase& screening);
HandMethod quadratic_strips(const ScreeningCase& screening);
HandMethod linear_strips(const ScreeningCase& screening);
HandMethod handbook_multiple(const ScreeningCase& screening);
HandMethod practice_of_widths(const ScreeningCase& screening);

/// Rules of the trade on intermediate idler sets.
std::vector<std::string> idler_practice(const ScreeningCase& screening);
/// Whether the belt is limp enough across for the trough.
std::vector<std::string> troughability_practice(const ScreeningCase& screening);

}  // namespace swale
