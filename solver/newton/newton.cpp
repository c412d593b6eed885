#include "solver/newton/newton.h"

#include "solver/equilibrium/stopwatch.h"

#include <fmt/core.h>

#include <algorithm>
#include <cmath>
#include <limits>
#include <optional>
#include <utility>

namespace swale {

namespace {

// A belt may relax until nothing carries force; then the residual is held against this share of the largest forces met.
constexpr double force_floor = 1e-4;

// A factor is used again as long as each step takes the residual down to this share.
constexpr double fast_fall = 0.1;

// Where rounding stops the iteration, a residual up to so many times the tolerance is an equilibrium: of a slack belt with
// stiff cords the forces are small differences of large ones.
constexpr double rounding_allowance = 20;

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

    // K p = -r; as long as K is not positive definite, (K + shift * area) p = -r with a growing shift. K is put together anew
    // for every try: the factor stands in its memory, and a large band should be there but once.
    bool find_step() {
        for (int attempt = 0; attempt < 40; ++attempt) {
            if (factor_) band_ = std::move(*factor_).memory();
            factor_.reset();
            system_.tangent_into(system_.supports().expand(q_), band_, &times_.terms);
            band_.diagonal() += (shift_ * areas_).transpose();
            factor_ = timed(times_.factorisation, [&] { return BandFactor(std::move(band_)); });
            if (factor_->ok()) {
                plain_ = shift_ == 0;
                shift_ = shift_ > 1e-7 ? shift_ / 8 : 0;
                return solve_step();
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
        const double rounding = rounding_of_energy();
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
            fast_ = share == 1 && relative_residual() < fast_fall * before;
            return lower || relative_residual() < before;
        }
        fast_ = false;
        return false;
    }

    // Near the end the factor at hand is good for another step or two, each at a tenth of the cost of a new one.
    void use_factor_again() {
        while (plain_ && fast_ && !small_enough()) {
            const double before = relative_residual(), energy_before = energy_;
            const Eigen::VectorXd here = q_, residual_here = residual_;
            if (!solve_step()) return;
            q_ = here + step_;
            energy_ = system_.energy(q_, &times_.terms);
            measure_residual();
            fast_ = energy_ <= energy_before + 10 * rounding_of_energy() && relative_residual() < fast_fall * before;
            if (fast_) continue;
            q_ = here;
            energy_ = energy_before;
            residual_ = residual_here;
        }
    }

    // The residual can't fall any further where a whole step promises less energy than its rounding.
    bool at_rounding() const {
        return relative_residual() <= rounding_allowance * settings_.tolerance &&
               std::abs(residual_.dot(step_)) < 1e3 * rounding_of_energy();
    }

    const Eigen::VectorXd& q() const { return q_; }

  private:
    bool solve_step() {
        step_ = timed(times_.factorisation, [&] { return factor_->solve(-residual_); });
        return step_.allFinite();
    }

    double rounding_of_energy() const { return 1e-13 * (std::abs(energy_) + reference_); }

    void measure_residual() {
        const ControlPoints gradient = system_.full_gradient(system_.supports().expand(q_), &times_.terms);
        residual_ = system_.supports().restrict(gradient);
        largest_ = std::max(largest_, gradient.norm());
        reference_ = std::max({gradient.norm(), force_floor * largest_, std::numeric_limits<double>::min()});
    }

    const System& system_;
    const NewtonSettings& settings_;
    NewtonTimes& times_;
    BandMatrix band_{0, 0};             // kept from step to step: the memory of a large band is dear to ask for
    std::optional<BandFactor> factor_;  // of the last step
    bool plain_ = false;                // without a shift
    bool fast_ = false;                 // the last step was whole and the residual fell fast
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

// No step lowers the energy: an equilibrium to rounding, or none.
NewtonOutcome stopped(const Descent& descent, int iteration, NewtonSettings settings) {
    if (!descent.at_rounding()) return outcome(descent, iteration, false, " (no step lowers the energy)", settings);
    settings.tolerance *= rounding_allowance;
    return outcome(descent, iteration, true, ", where the energy falls no further", settings);
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
        if (!descent.take_step()) return stopped(descent, iteration, settings);
        descent.use_factor_again();
    }
}

}  // namespace swale
