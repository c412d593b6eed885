#include "io/solve_table.h"

namespace swale {
namespace {

constexpr Allowed accuracy_range = {Kind::percentage, 0.01, 50};

}  // namespace

SolveSettings read_settings(CaseTable table, const TransitionLayout& layout) {
    SolveSettings settings;
    settings.accuracy = table.quantity("accuracy", accuracy_range).value_or(settings.accuracy);
    const Symmetry usual = layout.same_left_and_right() ? Symmetry::half : Symmetry::full;
    settings.model = table.choice<Symmetry>("model", {"half", "full"}).value_or(usual);
    if (settings.model == Symmetry::half && usual == Symmetry::full)
        table.reject("model", "left and right rolls differ", "\"full\"");
    settings.grid = table.number("grid", 0.25, 4).value_or(settings.grid);
    settings.newton_iterations = table.integer("newton_iterations", 1, 1000).value_or(settings.newton_iterations);
    settings.starts = table.integer("starts", 0, 9).value_or(settings.starts);
    settings.tension_path = table.integer("tension_path", 0, 200).value_or(settings.tension_path);
    table.finish();
    return settings;
}

}  // namespace swale
