#include "solver/transition/length_search.h"

#include <algorithm>
#include <utility>

namespace swale {

double LengthSearch::next(double scale, double miss, double end) {
    const double scale_before = std::exchange(last_scale_, scale), miss_before = std::exchange(last_miss_, miss);
    const double plain = -scale * miss / end;
    if (std::exchange(first_, false) || miss == miss_before) return scale + plain;
    // A belt that hangs through may take up more or less than it is given, but not the other way round or many times as much.
    const double by_secant = -miss * (scale - scale_before) / (miss - miss_before), share = by_secant / plain;
    return scale + std::clamp(share, 0.2, 5.0) * plain;
}

}  // namespace swale
