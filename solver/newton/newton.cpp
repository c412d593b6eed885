#include "solver/newton/newton.h"

#include "solver/equilibrium/stopwatch.h"

#include <fmt/core.h>

#include <algorithm>
#include <cmath>
#include <limits>
#include <utility>

namespace swale {

namespace {

// A belt may relax until nothing carries force; then the residual is held against this share of the largest forces met.
constexpr double force_floor = 1e-4;

// The state of the iteration, so that each step of the loop is a named function.
class Descent {
  public:
    Descent(const System& system, const NewtonSettings& settings, NewtonTimes& times)
        : system_(system), settings_(settings), times_(times), areas_(system.areas()) {}

    void start_at(const Eigen::VectorXd& q) {
        q_ = q;
        energy_ = system_.energy(q_, &times_.terms);
        measure_residual();
    }

    // ||T^T g|| / ||g||: the free part of the nodal forces against all of them, reactions included.
    double relative_residual() const { return residual_.norm() / reference_; }

    bool small_enough() const { return relative_residual() <= settings_.tolerance; }

    // K p = -r; as long as K is not positive definite, (K + shift * area) p = -r with a growing shift.
    bool find_step() {
        system_.tangent_into(system_.supports().expand(q_), tangent_, &times_.terms);
        for (int attempt = 0; attempt < 40; ++attempt) {
            shifted_ = tangent_;
            shifted_.diagonal() += (shift_ * areas_).transpose();
            BandFactor factor = timed(times_.factorisation, [&] { return BandFactor(std::move(shifted_)); });
            const bool definite = factor.ok();
            if (definite) step_ = timed(times_.factorisation, [&] { return factor.solve(-residual_); });
            shifted_ = std::move(factor).memory();
            if (definite) {
                shift_ = shift_ > 1e-7 ? shift_ / 8 : 0;
                return step_.allFinite();
            }
            shift_ = std::max(1e-6, shift_ * 4);
        }
        return false;
    }

    void cap_step() {
        const double largest = step_.cwiseAbs().maxCoeff();
        if (largest > settings_.step_cap) step_ *= settings_.step_cap / largest;
    }

    // Halves the step until the energy falls by a share of what the slope predicts. A predicted fall below the rounding of
    // the energy can't be seen in it: then the residual decides.
    bool take_step() {
        const double slope = residual_.dot(step_), before = relative_residual();
        const double rounding = 1e-13 * (std::abs(energy_) + reference_);
        double share = 1;
        for (int halving = 0; halving <= settings_.halvings; ++halving, share /= 2) {
            const Eigen::VectorXd trial = q_ + share * step_;
            const double energy = system_.energy(trial, &times_.terms);
            const bool lower = energy <= energy_ + settings_.armijo * share * slope;
            const bool hidden = std::abs(slope) * share < 1e3 * rounding && energy <= energy_ + 10 * rounding;
            if (!lower && !hidden) continue;
            q_ = trial;
            energy_ = energy;
            measure_residual();
            return lower || relative_residual() < before;
        }
        return false;
    }

    const Eigen::VectorXd& q() const { return q_; }

  private:
    void measure_residual() {
        const ControlPoints gradient = system_.full_gradient(system_.supports().expand(q_), &times_.terms);
        residual_ = system_.supports().restrict(gradient);
        largest_ = std::max(largest_, gradient.norm());
        reference_ = std::max({gradient.norm(), force_floor * largest_, std::numeric_limits<double>::min()});
    }

    const System& system_;
    const NewtonSettings& settings_;
    NewtonTimes& times_;
    BandMatrix tangent_{0, 0}, shifted_{0, 0};  // kept from step to step: the memory of a large band is dear to ask for
    Eigen::VectorXd areas_, q_, residual_, step_;
    double energy_ = 0, reference_ = 1, largest_ = 0, shift_ = 0;
};

NewtonOutcome outcome(const Descent& descent, int iteration, bool converged, const char* what, const NewtonSettings& settings) {
    const double residual = descent.relative_residual();
    return {converged,
            fmt::format("residual {:.1e} {} {:.1e} after {} iterations{}", residual, converged ? "<=" : ">", settings.tolerance,
                        iteration, what),
            iteration,
            residual,
            settings.tolerance,
            descent.q()};
}

}  // namespace

NewtonTimes& NewtonTimes::operator+=(const NewtonTimes& other) {
    terms.shell += other.terms.shell;
    terms.contact += other.terms.contact;
    terms.load += other.terms.load;
    factorisation += other.factorisation;
    return *this;
}

NewtonOutcome minimise(const System& system, const Eigen::VectorXd& start, const NewtonSettings& settings,
                       const NewtonWatcher& watcher, NewtonTimes* times) {
    NewtonTimes unread;
    Descent descent(system, settings, times ? *times : unread);
    descent.start_at(start);
    for (int iteration = 0;; ++iteration) {
        if (watcher) watcher(iteration, descent.relative_residual());
        if (descent.small_enough()) return outcome(descent, iteration, true, "", settings);
        if (iteration == settings.iterations) return outcome(descent, iteration, false, "", settings);
        if (!descent.find_step()) return outcome(descent, iteration, false, " (no shift made the tangent definite)", settings);
        descent.cap_step();
        if (!descent.take_step()) return outcome(descent, iteration, false, " (no step lowers the energy)", settings);
    }
}

}  // namespace swale
