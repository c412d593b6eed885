#include "solver/transition/grid_difference.h"

#include "solver/strain/peak_kinds.h"
#include "solver/strain/read_places.h"

#include <algorithm>
#include <cmath>

namespace swale {

namespace {

// Two grids of one belt, or of its running bay.
struct TwoGrids {
    BeltProbe fine, coarse;
    ReadingRange range;
    PeakContext context;
};

TwoGrids of_model(const TransitionCase& transition, const GridSolution& fine, const GridSolution& coarse) {
    const Section& section = transition.belt.section;
    return {{fine.model.patch, fine.points, section},
            {coarse.model.patch, coarse.points, section},
            reading_range(transition.layout, section, coarse.model),
            {transition.layout, section, coarse.model.patch.across.end()}};
}

TwoGrids of_bay(const TransitionCase& transition, const TroughBay& fine, const TroughBay& coarse) {
    const Section& section = transition.belt.section;
    return {{fine.patch, fine.points, section},
            {coarse.patch, coarse.points, section},
            {0, coarse.patch.along.end(), {}, 0},
            {transition.layout, section, coarse.patch.across.end()}};
}

double largest_difference(const PeakKind& kind, const TwoGrids& grids, double x, double y) {
    double largest = 0;
    for (const SurfacePoint& point : read_belt(grids.coarse, grids.range, spans_around(grids.coarse.patch(), x, y)))
        if (kind.counts(point, grids.context)) {
            const SurfacePoint finer = grids.fine.at(std::min(point.x, grids.fine.end()), point.y);
            const double difference = kind.value(finer, grids.context) - kind.value(point, grids.context);
            largest = std::max(largest, std::abs(difference));
        }
    return largest;
}

// Around a peak of one of the two grids; behind the model its place is that in the running bay, backwards.
double difference_around(const PeakKind& kind, const TransitionCase& transition, const GridSolution& fine,
                         const GridSolution& coarse, const Reading& peak, const BeltModel& of_peak) {
    const double beyond = peak.x - of_peak.patch.along.end();
    if (beyond <= 0) return largest_difference(kind, of_model(transition, fine, coarse), peak.x, peak.y);
    if (!fine.model.beyond || !coarse.model.beyond) return 0;  // that of the peaks is left
    const TwoGrids bays = of_bay(transition, fine.model.beyond->bay, coarse.model.beyond->bay);
    return largest_difference(kind, bays, bays.coarse.end() - beyond, peak.y);
}

}  // namespace

Readings grid_difference(const TransitionCase& transition, const GridSolution& fine, Readings of_fine,
                         const GridSolution& coarse, Readings of_coarse) {
    Readings differences;
    for (std::size_t k = 0; k < differences.all().size(); ++k)
        differences.all()[k]->value = std::abs(of_fine.all()[k]->value - of_coarse.all()[k]->value);
    for (const PeakKind& kind : peak_kinds) {
        const auto around = [&](const Reading& peak, const BeltModel& model) {
            return difference_around(kind, transition, fine, coarse, peak, model);
        };
        double& difference = (differences.*kind.reading).value;
        difference =
            std::max({difference, around(of_fine.*kind.reading, fine.model), around(of_coarse.*kind.reading, coarse.model)});
    }
    return differences;
}

}  // namespace swale
