#pragma once

#include <algorithm>
#include <cmath>
#include <memory>
#include <optional>
#include <vector>

namespace swale {

struct MeasuredSet;

/// How a set or the pulley carries the belt: by rolls in contact, or as an ideal line that holds the section (for checks).
enum class Support { rolls, held };

/// "tail": the belt runs off the pulley; "head": it runs on. x points from the pulley to the trough in both.
enum class BeltEnd { tail, head };

/// "stuck": plane section at the tangent line; "sliding": frictionless wrap.
enum class Grip { stuck, sliding };

/// Where a belt that runs on to a pulley begins to stick. "plane": the section is plane there, as of a belt that runs off;
/// "steady": the stretch is the same over the width and nothing moves sideways, as of a motion that has become steady.
enum class RunOn { plane, steady };

/// Terminal pulley; its top dead centre is x = 0. Lengths in mm.
struct Pulley {
    BeltEnd end = BeltEnd::tail;
    double diameter = 0;
    double lift = 0;  ///< pulley top above the line of the full sets' centre rolls
    Grip grip = Grip::stuck;
    Support support = Support::rolls;
    RunOn run_on = RunOn::plane;  ///< steady: of a stuck head pulley with rolls only
};

/// Full-trough idler sets, all alike. Lengths in mm, angles in rad.
struct Trough {
    double angle = 0;        ///< of the outermost rolls
    double centre_roll = 0;  ///< roll length
    double wing_roll = 0;    ///< of the outermost rolls; of the left one (+y) if the right one has its own
    double roll_gap = 0;
    double roll_end_radius = 0;
    double roll_diameter = 0;
    double spacing = 0;
    std::optional<int> sets;  ///< absent: "auto"
    Support support = Support::rolls;
    std::optional<double> flat_width;            ///< held profile only; absent: arc tangent to flat and wing line
    double junction_radius = 0;                  ///< held profile only
    int rolls = 3;                               ///< of a set: 2, 3 or 5
    double inner_angle = 0;                      ///< of the inner wings of five rolls
    double inner_roll = 0;                       ///< their length
    std::optional<double> wing_roll_right = {};  ///< absent: as the left one
    double wing_tilt = 0;      ///< of each wing roll in its own plane about its inner end, the outer end ahead as the belt runs
    double centre_offset = 0;  ///< centre roll ahead of the wings' plane along x
};

/// Intermediate idler set with the rolls of the full sets, at its own angle and height.
struct Station {
    double at = 0;               ///< distance from the pulley [mm]
    double angle = 0;            ///< [rad]
    std::optional<double> lift;  ///< of its centre roll above the full sets [mm]; absent: on the line pulley to first full set
    Support support = Support::rolls;
    std::optional<double> inner_angle = {};            ///< absent: in proportion to the full sets'
    std::shared_ptr<const MeasuredSet> measured = {};  ///< its rolls as they stand; none: as drawn
};

/// What lies on one roll of a set, from the centre line to an edge.
struct Facet {
    double begin = 0, end = 0;  ///< |y| of the flat belt: junction, edge or centre line [mm]
    double angle = 0;           ///< of the roll [rad]
};

/// The whole transition as drawn: pulley, intermediate sets in order of `at`, full sets. z = 0 is the mid-surface of a flat
/// belt on the centre rolls of the full sets.
struct TransitionLayout {
    double belt_width = 0;  ///< [mm]
    Pulley pulley;
    Trough trough;
    double distance = 0;  ///< pulley top to the first full set [mm]; unstretched length if the far end is held
    std::vector<Station> stations;
    std::vector<std::shared_ptr<const MeasuredSet>> measured;  ///< full sets from the first on, as they stand; null: as drawn

    /// y of the innermost idler junction: where the contact lines of centre and wing roll, produced, meet on the underside; 0
    /// where two wings meet [mm].
    double junction() const { return trough.rolls == 2 ? 0 : (trough.centre_roll + trough.roll_gap) / 2; }
    /// y of every junction of one side, from the centre outwards [mm].
    std::vector<double> junctions() const;
    /// The belt's facets on a set of these angles, from the centre outwards; the last ends at the edge.
    std::vector<Facet> facets(double angle, double inner_angle) const;
    std::vector<Facet> facets() const { return facets(trough.angle, trough.inner_angle); }
    /// Angle of the inner wings of an intermediate set [rad].
    double inner_angle_of(const Station& station) const;
    /// Both wings alike, of every set: half of the belt tells the whole.
    bool same_left_and_right() const;
    /// Any set stands as it was measured.
    bool any_measured() const;
    /// Full sets to model at first: those given, or in an endless trough as few as are judged or drawn, one more than are
    /// measured at least.
    int first_sets() const {
        if (trough.support == Support::held) return 1;
        return trough.sets.value_or(std::max(3, static_cast<int>(measured.size()) + 1));
    }
    /// A set's plane is a plane of symmetry of its rolls.
    bool same_fore_and_aft() const { return trough.wing_tilt == 0 && trough.centre_offset == 0; }
    /// +1 if the belt runs along +x, -1 along -x.
    double running_direction() const { return pulley.end == BeltEnd::tail ? 1 : -1; }
    /// Height of the centre roll of an intermediate set above the full sets [mm].
    double lift_of(const Station& station) const { return station.lift.value_or(pulley.lift * (1 - station.at / distance)); }
    /// Trough depth on the underside, W taken flat: the facets' widths times the sines of their angles [mm].
    double trough_depth() const;
};

}  // namespace swale
