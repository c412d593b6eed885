#pragma once

#include <map>
#include <optional>
#include <string>
#include <vector>

namespace swale {

/// One row of a study over distance: what each criterion leaves of its limit, in each state.
struct DistanceRow {
    double distance = 0;                 ///< [mm]
    std::string why_none;                ///< why there is no solution; empty if there is one
    std::map<std::string, double> left;  ///< share of the limit, the error taken off; below zero: over it

    bool solved() const { return why_none.empty(); }
    /// The criterion that leaves least; left.end() if nothing is judged.
    std::map<std::string, double>::const_iterator least() const;
};

/// From where on the belt passes, found between rows that were solved; nothing is drawn out beyond them.
struct RequiredDistance {
    std::optional<double> distance;  ///< [mm]; absent: `remark` says why
    std::string binding;             ///< criterion and state that meet their limit there
    std::optional<double> until;     ///< [mm]; where the belt fails again, as a slack one does that sags
    std::string until_binding;
    std::string remark;
};

/// Between two rows each criterion's share is a monotone curve in 1/L^2, in which strains are nearly straight. The required
/// distance is the near end of the longest stretch in which all pass. `width`: what remarks count distances in [mm].
RequiredDistance required_distance(std::vector<DistanceRow> rows, double width);

/// What a criterion leaves at a distance by the same curves; absent outside the solved rows next to it.
std::optional<double> left_at(const std::vector<DistanceRow>& rows, const std::string& criterion, double distance);

}  // namespace swale
