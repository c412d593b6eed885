#include "benchmarks/campaign/record.h"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>
#include <fstream>
#include <sstream>

namespace swale::benchmark {

namespace {

constexpr std::size_t columns = 22;

// Semicolons part the columns, so they become commas in a text.
std::string plain(std::string text) {
    std::replace_if(
        text.begin(), text.end(), [](char c) { return c == ';' || c == '\n'; }, ',');
    return text;
}

std::vector<std::string> split(const std::string& text, char at) {
    std::vector<std::string> parts;
    std::istringstream stream(text);
    for (std::string part; std::getline(stream, part, at);) parts.push_back(part);
    return parts;
}

Record from_cells(const std::vector<std::string>& cells) {
    std::size_t k = 0;
    const auto text = [&] { return cells[k++]; };
    const auto number = [&] { return std::stod(cells[k++]); };
    const auto whole = [&] { return std::stoi(cells[k++]); };
    Record r;
    r.index = whole();
    r.state = text();
    r.outcome = text();
    r.kinds = split(text(), '|');
    r.reason = text();
    for (double* value : {&r.along, &r.across, &r.vertical, &r.axial, &r.per_width, &r.sag, &r.edge_strain, &r.edge_error,
                          &r.edge_far_error, &r.edge_x, &r.tension_min, &r.eigenvalue_symmetric, &r.eigenvalue_antisymmetric})
        *value = number();
    r.sets = whole();
    r.unknowns = whole();
    r.iterations = whole();
    r.seconds = number();
    r.line = text();
    return r;
}

}  // namespace

std::string csv_header() {
    return "index;state;outcome;kinds;reason;along;across;vertical;axial;per_width "
           "N/mm;sag;edge_strain;edge_error;edge_far_error;edge_x;"
           "tension_min N/mm;eigenvalue_symmetric N/mm^3;eigenvalue_antisymmetric N/mm^3;sets;unknowns;iterations;seconds;case";
}

std::string csv_line(const Record& r) {
    return fmt::format(
        "{};{};{};{};{};{:.2e};{:.2e};{:.2e};{:.2e};{:.4g};{:.3g};{:.5g};{:.3g};{:.3g};{:.3g};{:.4g};{:.3g};{:.3g};{};{};{};{:."
        "1f};{}",
        r.index, r.state, r.outcome, plain(fmt::format("{}", fmt::join(r.kinds, "|"))), plain(r.reason), r.along, r.across,
        r.vertical, r.axial, r.per_width, r.sag, r.edge_strain, r.edge_error, r.edge_far_error, r.edge_x, r.tension_min,
        r.eigenvalue_symmetric, r.eigenvalue_antisymmetric, r.sets, r.unknowns, r.iterations, r.seconds, plain(r.line));
}

std::vector<Record> read_records(const std::string& file) {
    std::vector<Record> records;
    std::ifstream stream(file);
    for (std::string line; std::getline(stream, line);) {
        const std::vector<std::string> cells = split(line, ';');
        if (cells.size() > columns && cells[0] != "index") records.push_back(from_cells(cells));
    }
    std::stable_sort(records.begin(), records.end(), [](const Record& a, const Record& b) { return a.index < b.index; });
    return records;
}

}  // namespace swale::benchmark
