#include "solver/transition/error_estimate.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace swale {

namespace {

// An estimate is a share of the difference of the two finest grids and a share of the reading itself: places where peaks are
// looked for are discrete, and next to a stuck line strain still grows a little when spans no longer show it. In the order of
// Readings::all; chosen on 116 transitions and held against others, see benchmarks/README.md.
struct Share {
    double of_difference, of_value;
};
constexpr std::array<Share, 8> shares{
    {{0.8, 3e-3}, {0.5, 1e-4}, {0.8, 3e-3}, {0.35, 1e-4}, {0.4, 5e-4}, {1.4, 1e-3}, {0.5, 4e-3}, {0.5, 3e-4}}};

// What is nearer to the endless trough is not there yet: a part more, and as much as the knots' places in a trough of another
// length may do; that was up to 0.6 % in the faces' strain and 0.3 % in the line force.
constexpr std::array<Share, 8> far_end_shares{
    {{1.3, 2e-4}, {1.3, 3e-4}, {1.3, 2e-4}, {1.3, 3e-4}, {1.3, 3e-4}, {1.3, 7e-3}, {1.3, 3e-3}, {1.3, 1e-3}}};

double estimate(const Share& share, double difference, double value) {
    return share.of_difference * std::abs(difference) + share.of_value * std::abs(value);
}

struct Judged {
    const char* name;
    const Reading* reading;
    double scale;
};

std::vector<Judged> judged_readings(const TransitionCase& transition, const TensionState& state, const Readings& r) {
    const Limits& limits = transition.limits_in(state);
    std::vector<Judged> judged{{"edge strain", &r.edge_strain_max, std::abs(r.edge_strain_max.value)}};
    if (limits.edge_tension && transition.belt.rated_tension)
        judged.push_back({"edge tension", &r.edge_tension_max, std::abs(r.edge_tension_max.value)});
    if (limits.tension_min) judged.push_back({"lowest tension", &r.tension_min, std::abs(r.edge_tension_max.value)});
    if (limits.junction_strain)
        judged.push_back({"junction strain", &r.junction_bending_strain_max, std::abs(r.junction_bending_strain_max.value)});
    if (limits.roll_force) judged.push_back({"roll force", &r.roll_force_max, std::abs(r.roll_force_max.value)});
    return judged;
}

Excess worst(const TransitionCase& transition, const TensionState& state, const Readings& readings,
             std::optional<double> Reading::*error, double share) {
    Excess worst;
    double highest = 1;
    for (const Judged& judged : judged_readings(transition, state, readings)) {
        const double value = (judged.reading->*error).value_or(0), wanted = share * judged.scale;
        if (!(value > highest * wanted)) continue;  // neither does what is not defined
        highest = value / wanted;
        worst = {judged.name, value, wanted};
    }
    return worst;
}

}  // namespace

void estimate_discretisation(Readings& finest, Readings differences, int halvings) {
    const double shorter = std::pow(0.5, halvings - 1);  // than the spans that the shares were chosen on
    for (std::size_t k = 0; k < finest.all().size(); ++k) {
        const double value = finest.all()[k]->value;
        const Share share{shares[k].of_difference, shorter * shares[k].of_value};
        finest.all()[k]->error = estimate(share, differences.all()[k]->value, value);
    }
}

void estimate_far_end(Readings& result, Readings as_modelled, Readings nearer) {
    for (std::size_t k = 0; k < result.all().size(); ++k) {
        const double difference = nearer.all()[k]->value - as_modelled.all()[k]->value;
        result.all()[k]->far_end_error = estimate(far_end_shares[k], difference, result.all()[k]->value);
    }
}

Excess discretisation_excess(const TransitionCase& transition, const TensionState& state, Readings readings) {
    return worst(transition, state, readings, &Reading::error, transition.settings.accuracy);
}

Excess far_end_excess(const TransitionCase& transition, const TensionState& state, Readings readings) {
    return worst(transition, state, readings, &Reading::far_end_error, transition.settings.accuracy / 4);
}

}  // namespace swale
