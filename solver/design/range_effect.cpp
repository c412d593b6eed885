#include "solver/design/range_effect.h"

#include <algorithm>
#include <cmath>

namespace swale {

const std::array<StudiedQuantity, studied_quantities>& all_studied_quantities() {
    static const std::array<StudiedQuantity, studied_quantities> quantities{{
        {"edge strain", &Readings::edge_strain_max, &Readings::edge_strain_max},
        {"centre strain", &Readings::centre_strain_min, &Readings::edge_strain_max},
        {"edge tension", &Readings::edge_tension_max, &Readings::edge_tension_max},
        {"lowest tension", &Readings::tension_min, &Readings::edge_tension_max},
        {"junction strain", &Readings::junction_bending_strain_max, &Readings::junction_bending_strain_max},
    }};
    return quantities;
}

namespace {

std::optional<double> value_in(const StudiedState& state, const StudiedQuantity& quantity) {
    if (!state.readings) return {};
    return (*state.readings.*quantity.reading).value;
}

RangeEffect effect_in(const StudiedState& as_given, const StudiedState& low, const StudiedState& high,
                      const StudiedQuantity& quantity) {
    RangeEffect effect{0, as_given.name, value_in(low, quantity), value_in(as_given, quantity), value_in(high, quantity)};
    if (!effect.as_given) return effect;
    const double given = *effect.as_given, at_low = effect.low.value_or(given), at_high = effect.high.value_or(given);
    const auto [least, most] = std::minmax({given, at_low, at_high});
    effect.swing = (most - least) / std::abs((*as_given.readings.*quantity.scale).value);
    return effect;
}

}  // namespace

std::array<RangeEffect, studied_quantities> range_effects(const StudiedRun& as_given, const StudiedRun& low,
                                                          const StudiedRun& high) {
    std::array<RangeEffect, studied_quantities> effects;
    for (int q = 0; q < studied_quantities; ++q)
        for (std::size_t k = 0; k < as_given.states.size(); ++k) {
            const StudiedQuantity& quantity = all_studied_quantities()[q];
            const RangeEffect effect = effect_in(as_given.states[k], low.states[k], high.states[k], quantity);
            if (k == 0 || effect.swing > effects[q].swing) effects[q] = effect;
        }
    return effects;
}

double StudiedDatum::largest_swing() const {
    return std::ranges::max(effects, {}, &RangeEffect::swing).swing;
}

}  // namespace swale
