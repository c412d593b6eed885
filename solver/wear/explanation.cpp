#include "solver/wear_diagnosis.h"

#include <algorithm>

namespace swale {

int informative_readings(const SurveyedRoll& roll) {
    double deepest = 0;
    for (const DepthReading& reading : roll.depths) deepest = std::max(deepest, reading.depth);
    int readings = deepest > 0 ? static_cast<int>(roll.depths.size()) : 0;
    for (const MarkedBand& band : roll.bands) readings += band.mark == Mark::unsure ? 0 : 1;
    return readings;
}

std::string name_of(Explanation explanation) {
    switch (explanation) {
        case Explanation::flat:
            return "a flat belt in the middle";
        case Explanation::cupped:
            return "a cupped belt";
        case Explanation::creased:
            return "a belt creased at the junctions";
        case Explanation::both:
            return "a belt both creased and cupped";
        case Explanation::mistracked:
            return "a flat belt off the middle";
        case Explanation::other:
            return "none of these";
    }
    return {};
}

Explanation Likelihoods::best() const {
    return static_cast<Explanation>(std::max_element(of, of + explanations) - of);
}

Explanation Likelihoods::second() const {
    const int first = static_cast<int>(best());
    int second = first == 0 ? 1 : 0;
    for (int e = 0; e < explanations; ++e)
        if (e != first && of[e] > of[second]) second = e;
    return static_cast<Explanation>(second);
}

}  // namespace swale
