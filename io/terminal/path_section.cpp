#include "io/terminal/path_section.h"

#include "io/terminal/plain_text.h"

#include <fmt/format.h>

namespace swale {

namespace {

// kN/m^3
std::string eigenvalue(const std::optional<double>& value) {
    return value ? significant(*value * 1e6) : "-";
}

std::string vanishing(const char* kind, const std::optional<double>& tension) {
    return tension ? fmt::format("{} at {} kN", kind, significant(*tension / 1e3)) : fmt::format("{} at none of them", kind);
}

}  // namespace

std::vector<TextRow> tension_path_rows(const TensionPath& path) {
    if (path.rows.empty()) return {};
    std::vector<TextRow> rows{
        {"Tension [kN]", "edge strain [%]", "centre strain [%]", "symmetric [kN/m^3]", "antisymmetric [kN/m^3]"}};
    for (const TensionPathRow& row : path.rows) {
        rows.push_back({significant(row.tension / 1e3)});
        if (row.converged)
            rows.back().insert(rows.back().end(),
                               {significant(100 * row.edge_strain_max.value), significant(100 * row.centre_strain_min.value),
                                eigenvalue(row.eigenvalue_symmetric), eigenvalue(row.eigenvalue_antisymmetric)});
        else
            rows.back().insert(rows.back().end(), {"no solution", "-", "-", "-"});
    }
    return rows;
}

std::string vanishing_words(const TensionPath& path) {
    return "The eigenvalue becomes zero: " + vanishing("symmetric", path.symmetric_zero) + ", " +
           vanishing("antisymmetric", path.antisymmetric_zero) + ". Coarse grid, without error estimates.";
}

std::string path_section(const TransitionResult& result) {
    const std::vector<TextRow> rows = tension_path_rows(result.path);
    return rows.empty() ? ""
                        : "As the tension falls\n" + text_table(rows, "rr") + "  " + wrapped(vanishing_words(result.path), 2);
}

}  // namespace swale
