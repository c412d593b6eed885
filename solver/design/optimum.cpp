#include "solver/design/optimum.h"

#include <algorithm>
#include <nlopt.hpp>
#include <stdexcept>
#include <utility>

namespace swale {

namespace {

// Reach of one run to either side of where it starts, as a share of a variable's range, of a distance as a share of itself:
// slopes are not believed farther.
constexpr double reach = 0.3;
constexpr double worth_another_run = 5e-3;
// A headroom is asked for with so much to spare, since the method ends a little short of it.
constexpr double to_spare = 2e-3;

// Variables between 0 and 1; the last unknown of NLopt is the headroom that all must have.
class Problem {
  public:
    Problem(const std::vector<Variable>& variables, const ValuesTrial& trial, bool first_value, double margin)
        : variables_(variables), trial_(trial), first_value_(first_value), margin_(margin) {}

    void run(const std::vector<double>& start, int most_trials) {
        std::vector<double> unknowns = shares_of(start);
        const Trial& first = tried(unknowns);
        unknowns.push_back(first.solved() && first.least() ? first.least()->share : -1);
        const auto count = static_cast<unsigned>(std::max<std::size_t>(first.headrooms.size(), 1));
        nlopt::opt solver(nlopt::LD_SLSQP, static_cast<unsigned>(unknowns.size()));
        bound(unknowns, solver);
        solver.set_max_objective(objective, this);
        solver.add_inequality_mconstraint(constraints, this, std::vector<double>(count, 1e-4));
        solver.set_xtol_rel(2e-3);
        solver.set_maxeval(most_trials);
        double reached = 0;
        try {
            solver.optimize(unknowns, reached);
        } catch (const std::runtime_error&) {
            // Round-off ends the search where it is; the best of what was tried stands.
        }
    }

    const Optimum& best() const { return best_; }

  private:
    std::vector<double> shares_of(const std::vector<double>& values) const {
        std::vector<double> shares;
        for (std::size_t k = 0; k < variables_.size(); ++k)
            shares.push_back(std::clamp((values[k] - variables_[k].low) / range(k), 0.0, 1.0));
        return shares;
    }

    double range(std::size_t k) const { return std::max(variables_[k].high - variables_[k].low, 1e-9); }

    double reach_of(std::size_t k, double start) const {
        if (!first_value_ || k > 0) return reach;
        return reach * (variables_[k].low + start * range(k)) / range(k);
    }

    void bound(const std::vector<double>& start, nlopt::opt& solver) const {
        std::vector<double> low, high;
        for (std::size_t k = 0; k < variables_.size(); ++k) {
            const double far = reach_of(k, start[k]);
            low.push_back(std::max(0.0, start[k] - far));
            high.push_back(std::min(1.0, start[k] + far));
        }
        low.push_back(first_value_ ? start.back() - 1 : -10);
        high.push_back(10);
        solver.set_lower_bounds(low);
        solver.set_upper_bounds(high);
    }

    const Trial& tried(const std::vector<double>& shares) {
        std::vector<double> values;
        for (std::size_t k = 0; k < variables_.size(); ++k) values.push_back(variables_[k].low + shares[k] * range(k));
        if (values == last_.values) return last_.trial;
        last_ = {values, trial_(values)};
        if (best_.values.empty() || better(last_)) best_ = last_;
        return last_.trial;
    }

    bool better(const Optimum& one) const {
        if (!first_value_) return one.least() > best_.least();
        const bool passes = one.least() >= margin_, passed = best_.least() >= margin_;
        if (passes && passed) return one.values.front() < best_.values.front();
        return passes || (!passed && one.least() > best_.least());
    }

    static double objective(const std::vector<double>& x, std::vector<double>& gradient, void* self) {
        const auto& problem = *static_cast<Problem*>(self);
        std::ranges::fill(gradient, 0);
        if (!gradient.empty()) (problem.first_value_ ? gradient.front() : gradient.back()) = problem.first_value_ ? -1 : 1;
        return problem.first_value_ ? -x.front() : x.back();
    }

    // t - headroom <= 0 each; for the smallest first value margin - headroom.
    static void constraints(unsigned m, double* result, unsigned n, const double* x, double* gradient, void* self) {
        auto& problem = *static_cast<Problem*>(self);
        const Trial& trial = problem.tried({x, x + n - 1});
        for (unsigned j = 0; j < m; ++j) {
            const bool known = trial.solved() && j < trial.headrooms.size();
            result[j] =
                (problem.first_value_ ? problem.margin_ + to_spare : x[n - 1]) - (known ? trial.headrooms[j].share : -1);
            if (!gradient) continue;
            for (unsigned k = 0; k + 1 < n; ++k) {
                const bool sloped = known && k < trial.headrooms[j].slopes.size();
                gradient[j * n + k] = sloped ? -trial.headrooms[j].slopes[k] * problem.range(k) : 0;
            }
            gradient[j * n + n - 1] = problem.first_value_ ? 0 : 1;
        }
    }

    const std::vector<Variable>& variables_;
    const ValuesTrial& trial_;
    bool first_value_;
    double margin_;
    Optimum last_, best_;
};

}  // namespace

Optimum most_headroom(const std::vector<Variable>& variables, const std::vector<std::vector<double>>& starts,
                      const ValuesTrial& trial, int most_trials) {
    Problem problem(variables, trial, false, 0);
    for (const std::vector<double>& start : starts) problem.run(start, most_trials);
    for (double before = -2; problem.best().least() > before + worth_another_run;) {
        before = problem.best().least();
        problem.run(std::vector<double>(problem.best().values), most_trials);
    }
    return problem.best();
}

Optimum least_first_value(const std::vector<Variable>& variables, const std::vector<double>& start, double margin,
                          const ValuesTrial& trial, int most_trials) {
    Problem problem(variables, trial, true, margin);
    problem.run(start, most_trials);
    for (double before = 1e300; problem.best().values.front() < before * (1 - worth_another_run);) {
        before = problem.best().values.front();
        problem.run(std::vector<double>(problem.best().values), most_trials);
    }
    return problem.best();
}

}  // namespace swale
