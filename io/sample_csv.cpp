#include "io/sample_csv.h"

#include "io/csv_field.h"
#include "io/sample_table.h"
#include "io/verdict.h"

#include <fmt/format.h>

#include <cmath>
#include <iterator>

namespace swale {

namespace {

template <class Row>
std::string header(const std::string& names, const std::vector<Column<Row>>& columns) {
    std::string line = names;
    for (const Column<Row>& column : columns) line += std::string(",") + column.name;
    return line + "\n";
}

template <class Row>
void append_row(std::string& text, const std::string& names, const std::vector<Column<Row>>& columns, const Row& row) {
    text += names;
    for (const Column<Row>& column : columns) {
        text += ',';
        const double value = column.value(row) + 0.0;  // no "-0"
        if (std::isfinite(value)) fmt::format_to(std::back_inserter(text), "{}", value);
    }
    text += '\n';
}

}  // namespace

std::string along_csv(const TransitionResult& result) {
    std::string text = header("state", along_columns());
    for (const StateResult& state : result.states) {
        if (!converged(state)) continue;
        for (const AlongRow& row : state.along) append_row(text, csv_field(state.name), along_columns(), row);
    }
    return text;
}

std::string across_csv(const TransitionResult& result) {
    std::string text = header("state,section", across_columns());
    for (const StateResult& state : result.states) {
        if (!converged(state)) continue;
        for (const CrossSection& section : state.across) {
            const std::string names = csv_field(state.name) + ',' + csv_field(section.name);
            for (const SurfacePoint& point : section.points) append_row(text, names, across_columns(), point);
        }
    }
    return text;
}

}  // namespace swale
