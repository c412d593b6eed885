#include "io/picture/colour.h"

#include "io/picture/round_steps.h"
#include "io/report/page_parts.h"

#include <algorithm>
#include <cmath>

namespace swale {

Colour ColourScale::at(double value) const {
    const double share = std::isfinite(value) && high > low ? std::clamp((value - low) / (high - low), 0.0, 1.0) : 0;
    const int band = std::min(static_cast<int>(share * bands), bands - 1), last = std::max(1, bands - 1);
    return (*table)[static_cast<size_t>((2 * 255 * band + last) / (2 * last))];  // 255 band / last, rounded
}

ColourScale colour_scale(double low, double high, bool both_signs) {
    constexpr int about = 11;
    if (both_signs) {
        const double reach = std::max({std::abs(low), std::abs(high), 1e-12});
        const double step = round_step(2 * reach / about);
        const int half = static_cast<int>(std::ceil(reach / step - 1e-9));
        return {-half * step, half * step, &page_parts::diverging, 2 * half};
    }
    const double step = round_step(std::max(high - low, 1e-12 + 1e-6 * std::abs(high)) / about);
    const double from = std::floor(low / step + 1e-9) * step, to = std::ceil(high / step - 1e-9) * step;
    return {from, to, &page_parts::sequential, std::max(1, static_cast<int>(std::lround((to - from) / step)))};
}

}  // namespace swale
