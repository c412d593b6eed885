#include "solver/wear/shape_table.h"

#include "solver/transition/workers.h"
#include "solver/wear/return_solution.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <stdexcept>

namespace swale {

namespace {

// One belt solved for one memory after the other, each from the one before.
struct Chain {
    std::vector<PressureShape> shapes;
    std::vector<std::string> failures;
};

class ChainSolver {
  public:
    ChainSolver(const ReturnRun& run, int crease_sign) : run_(run), crease_sign_(crease_sign) {}

    BeltMemory memory_of(const Memory& memory) const {
        const double crease = crease_sign_ * memory.crease;
        return {8 * memory.cupping / run_.width, crease, crease};  // rise = k W^2/8
    }

    Chain solved(const std::vector<Memory>& memories) const {
        const Patch patch = return_patch(run_, true, {});
        ControlPoints points = flat_on_roll(run_, patch);
        Chain chain;
        PressureShape last = even_shape();
        for (const Memory& memory : memories) {
            const ReturnSolution solution = solve_return(run_, memory_of(memory), patch, points);
            if (solution.contact.converged) {
                last = pressure_shape(solution.contact.pressure);
                points = solution.points;
            } else {
                chain.failures.push_back(solution.contact.reason);
            }
            chain.shapes.push_back(last);
        }
        return chain;
    }

  private:
    PressureShape even_shape() const {
        return pressure_shape({{-run_.width / 4, run_.width / 2, 1}, {run_.width / 4, run_.width / 2, 1}});
    }

    const ReturnRun& run_;
    int crease_sign_;
};

std::vector<Memory> memories(const std::vector<double>& cupping, const std::vector<double>& crease) {
    std::vector<Memory> all;
    for (const double k : cupping)
        for (const double a : crease) all.push_back({k, a});
    return all;
}

std::vector<double> negative(std::vector<double> values) {
    for (double& value : values) value = -value;
    return values;
}

// -values in reverse, 0, values
std::vector<double> both_signs(const std::vector<double>& values) {
    std::vector<double> all = negative(values);
    std::reverse(all.begin(), all.end());
    all.push_back(0);
    all.insert(all.end(), values.begin(), values.end());
    return all;
}

// Index of the interval that holds a value and how far into it.
std::pair<int, double> place_in(const std::vector<double>& nodes, double value) {
    const auto above = std::upper_bound(nodes.begin(), nodes.end(), value);
    const int low = std::clamp(static_cast<int>(above - nodes.begin()) - 1, 0, static_cast<int>(nodes.size()) - 2);
    return {low, std::clamp((value - nodes[low]) / (nodes[low + 1] - nodes[low]), 0.0, 1.0)};
}

}  // namespace

Section with_stiffness_across(Section section, double factor) {
    section.bending(1, 1) *= factor;
    section.bending(0, 1) *= std::sqrt(factor);
    section.bending(1, 0) *= std::sqrt(factor);
    section.bending(2, 2) *= std::sqrt(factor);
    return section;
}

ShapeNodes usual_nodes(double stiffness_low, double stiffness_high) {
    constexpr double degree = std::numbers::pi / 180;
    ShapeNodes nodes;
    nodes.cupping = {0.012, 0.025, 0.05, 0.09, 0.16, 0.28};
    nodes.crease = {3 * degree, 5.5 * degree, 9 * degree, 14 * degree, 22 * degree, 35 * degree};
    nodes.mixed_cupping = {0.03, 0.12};
    nodes.mixed_crease = {5 * degree, 10 * degree, 22 * degree};
    nodes.stiffness = {stiffness_low};
    if (stiffness_high > 1.001 * stiffness_low)
        nodes.stiffness.insert(nodes.stiffness.end(), {std::sqrt(stiffness_low * stiffness_high), stiffness_high});
    return nodes;
}

PressureShape ShapeTable::Grid::at(double k, double a) const {
    const int stride = static_cast<int>(crease.size());
    const auto along_crease = [&](int row) {
        if (stride == 1) return shape[row];
        const auto [low, share] = place_in(crease, a);
        return mixed(shape[row * stride + low], shape[row * stride + low + 1], share);
    };
    if (cupping.size() == 1) return along_crease(0);
    const auto [low, share] = place_in(cupping, k);
    return mixed(along_crease(low), along_crease(low + 1), share);
}

ShapeTable::Tables ShapeTable::solved_tables(const ReturnRun& run, const ShapeNodes& nodes, int crease_sign) {
    const ChainSolver solver(run, crease_sign);
    Workers workers;
    const auto ask = [&](std::vector<Memory> chain) { return workers.run([&solver, chain] { return solver.solved(chain); }); };
    std::vector<std::future<Chain>> mixed_rows;
    std::vector<double> flat_and_creased = nodes.crease;
    flat_and_creased.insert(flat_and_creased.begin(), 0);
    auto down = ask(memories(negative(nodes.cupping), {0})), up = ask(memories(nodes.cupping, {0}));
    auto creased = ask(memories({0}, flat_and_creased));
    for (const double k : both_signs(nodes.mixed_cupping)) mixed_rows.push_back(ask(memories({k}, nodes.mixed_crease)));

    Tables tables;
    const auto take = [&](std::future<Chain>& future) {
        const Chain chain = future.get();
        tables.failures.insert(tables.failures.end(), chain.failures.begin(), chain.failures.end());
        tables.solved += static_cast<int>(chain.shapes.size());
        return chain.shapes;
    };
    tables.creased = {{0}, flat_and_creased, take(creased)};
    std::vector<PressureShape> all = take(down);
    std::reverse(all.begin(), all.end());
    all.push_back(tables.creased.shape.front());
    for (const PressureShape& shape : take(up)) all.push_back(shape);
    tables.cupped = {both_signs(nodes.cupping), {0}, std::move(all)};
    tables.mixed = {both_signs(nodes.mixed_cupping), nodes.mixed_crease, {}};
    for (std::future<Chain>& row : mixed_rows)
        for (const PressureShape& shape : take(row)) tables.mixed.shape.push_back(shape);
    return tables;
}

ShapeTable::ShapeTable(const ReturnRun& run, const ShapeNodes& nodes, int crease_sign) : stiffness_(nodes.stiffness) {
    for (const double factor : nodes.stiffness) {
        ReturnRun scaled = run;
        scaled.section = with_stiffness_across(run.section, factor);
        tables_.push_back(solved_tables(scaled, nodes, crease_sign));
        failures_.insert(failures_.end(), tables_.back().failures.begin(), tables_.back().failures.end());
        solved_ += tables_.back().solved;
    }
}

PressureShape ShapeTable::at(const Tables& tables, const Memory& memory) {
    if (memory.crease == 0) return tables.cupped.at(memory.cupping, 0);
    if (memory.cupping == 0) return tables.creased.at(0, memory.crease);
    return tables.mixed.at(memory.cupping, memory.crease);
}

PressureShape ShapeTable::at(const Memory& memory, double stiffness) const {
    std::vector<double> logs;
    for (const double factor : stiffness_) logs.push_back(std::log(factor));
    if (logs.size() == 1) return at(tables_.front(), memory);
    const auto [low, share] = place_in(logs, std::log(stiffness));
    return mixed(at(tables_[low], memory), at(tables_[low + 1], memory), share);
}

}  // namespace swale
