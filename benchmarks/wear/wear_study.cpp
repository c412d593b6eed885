// Synthetic surveys of return rolls against what `swale wear` says of them.
//   swale_wear_study [SURVEYS] [--seed N] [--power PER_CENT]
// With --power wear grows with pressure to another power than the diagnosis takes for granted.
#include "benchmarks/arguments.h"
#include "benchmarks/keep_memory.h"
#include "benchmarks/wear/wear_tally.h"
#include "solver/wear/diagnosis.h"

#include <fmt/format.h>

#include <chrono>

using namespace swale;
using namespace swale::benchmark;

namespace {

double seconds_now() {
    return std::chrono::duration<double>(std::chrono::steady_clock::now().time_since_epoch()).count();
}

}  // namespace

int main(int count, char** values) {
    keep_memory();
    const Arguments arguments(count, values);
    const int surveys = arguments.plain(0, 720), seed = arguments.option("seed", 1);
    const double power = arguments.option("power", 100) / 100.0;
    WearTally tally;
    int unsolved = 0;
    double slowest_table = 0;
    for (int c = 0; c < surveyed_conveyors; ++c) {
        const WearSurvey empty = conveyor(c);
        const double before = seconds_now();
        const ShapeTable table = shapes_of(empty);
        slowest_table = std::max(slowest_table, seconds_now() - before);
        for (const std::string& failure : table.failures()) fmt::print("conveyor {}: {}\n", c, failure);
        for (int k = c; k < surveys; k += surveyed_conveyors) {
            Draw draw(seed, k);
            const RandomSurvey made = random_survey(empty, draw, power);
            if (!made.truth.solved) {
                ++unsolved;
                fmt::print("survey {} left out: cupping {:.2g}/mm, creases {:.2g} and {:.2g}: {}\n", k,
                           made.truth.memory.cupping, made.truth.memory.left_crease, made.truth.memory.right_crease,
                           made.truth.reason);
                continue;
            }
            const double start = seconds_now();
            const WearDiagnosis diagnosis = diagnose(made.survey, table);
            tally.add(made, diagnosis, seconds_now() - start);
        }
    }
    fmt::print("{}\nshapes of one belt: longest {:.2f} s; {} belts without an equilibrium left out\n", tally.text(),
               slowest_table, unsolved);
}
