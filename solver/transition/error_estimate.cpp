#include "solver/transition/error_estimate.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace swale {

namespace {

// What the difference of the two finest grids is multiplied with, in the order of Readings::all. Smooth readings fall by 4 to
// 16 from grid to grid, so that a third to a fifteenth of the difference is left; peaks at rolls fall less, those of the faces'
// strain least. Chosen on the transitions of benchmarks/published/error_study.cpp, see benchmarks/README.md.
constexpr std::array<double, 7> share_of_difference{1.4, 0.7, 1.4, 0.7, 1.0, 2.8, 1.4};
// A share of the reading that no estimate goes below: the places where peaks are looked for are discrete.
constexpr double least_share = 2e-4;

struct Judged {
    const char* name;
    const Reading* reading;
    double scale;
};

std::vector<Judged> judged_readings(const TransitionCase& transition, const Readings& r) {
    std::vector<Judged> judged{{"edge strain", &r.edge_strain_max, std::abs(r.edge_strain_max.value)}};
    if (transition.limits.edge_tension && transition.belt.rated_tension)
        judged.push_back({"edge tension", &r.edge_tension_max, std::abs(r.edge_tension_max.value)});
    if (transition.limits.tension_min) judged.push_back({"lowest tension", &r.tension_min, std::abs(r.edge_tension_max.value)});
    if (transition.limits.junction_strain)
        judged.push_back({"junction strain", &r.junction_bending_strain_max, std::abs(r.junction_bending_strain_max.value)});
    return judged;
}

Excess worst(const TransitionCase& transition, const Readings& readings, std::optional<double> Reading::*error, double share) {
    Excess worst;
    double highest = 1;
    for (const Judged& judged : judged_readings(transition, readings)) {
        const double value = (judged.reading->*error).value_or(0), wanted = share * judged.scale;
        if (value <= highest * wanted) continue;
        highest = value / wanted;
        worst = {judged.name, value, wanted};
    }
    return worst;
}

}  // namespace

void estimate_discretisation(Readings& finest, const std::vector<Readings>& coarser) {
    Readings last = coarser.back();
    for (std::size_t k = 0; k < finest.all().size(); ++k) {
        const double value = finest.all()[k]->value, difference = std::abs(value - last.all()[k]->value);
        finest.all()[k]->error = share_of_difference[k] * difference + least_share * std::abs(value);
    }
}

// What is nearer is not there yet: a part more, and as much as the knots' places in a trough of another length may do.
void estimate_far_end(Readings& result, Readings as_modelled, Readings nearer) {
    for (std::size_t k = 0; k < result.all().size(); ++k) {
        const double difference = std::abs(nearer.all()[k]->value - as_modelled.all()[k]->value);
        result.all()[k]->far_end_error = 1.3 * difference + least_share * std::abs(result.all()[k]->value);
    }
}

Excess discretisation_excess(const TransitionCase& transition, Readings readings) {
    return worst(transition, readings, &Reading::error, transition.settings.accuracy);
}

Excess far_end_excess(const TransitionCase& transition, Readings readings) {
    return worst(transition, readings, &Reading::far_end_error, transition.settings.accuracy / 4);
}

}  // namespace swale
