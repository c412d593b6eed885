#pragma once

#include <optional>
#include <vector>

namespace swale {

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

/// Full-trough idler sets, all alike. Lengths in mm, angle in rad.
struct Trough {
    double angle = 0;
    double centre_roll = 0;  ///< roll length
    double wing_roll = 0;
    double roll_gap = 0;
    double roll_end_radius = 0;
    double roll_diameter = 0;
    double spacing = 0;
    std::optional<int> sets;  ///< absent: "auto"
    Support support = Support::rolls;
    std::optional<double> flat_width;  ///< held profile only; absent: arc tangent to flat and wing line
    double junction_radius = 0;        ///< held profile only
};

/// Intermediate idler set with the rolls of the full sets, at its own angle and height.
struct Station {
    double at = 0;               ///< distance from the pulley [mm]
    double angle = 0;            ///< [rad]
    std::optional<double> lift;  ///< of its centre roll above the full sets [mm]; absent: on the line pulley to first full set
    Support support = Support::rolls;
};

/// The whole transition as drawn: pulley, intermediate sets in order of `at`, full sets. z = 0 is the mid-surface of a flat
/// belt on the centre rolls of the full sets.
struct TransitionLayout {
    double belt_width = 0;  ///< [mm]
    Pulley pulley;
    Trough trough;
    double distance = 0;  ///< pulley top to the first full set [mm]; unstretched length if the far end is held
    std::vector<Station> stations;

    /// y of the idler junction: where the contact lines of centre and wing roll, produced, meet on the underside [mm].
    double junction() const { return (trough.centre_roll + trough.roll_gap) / 2; }
    /// Height of the centre roll of an intermediate set above the full sets [mm].
    double lift_of(const Station& station) const { return station.lift.value_or(pulley.lift * (1 - station.at / distance)); }
    /// Trough depth on the underside, W taken flat: wing width times sin(angle) [mm].
    double trough_depth() const;
};

}  // namespace swale
