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

// An unstable equilibrium must be one to the last digits, also on a grid that gives but a start.
NewtonSettings strict(NewtonSettings settings) {
    settings.tolerance = std::min(settings.tolerance, NewtonSettings{}.tolerance);
    return settings;
}

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
                indefinite_ = attempt > 0;
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

    // An equilibrium, to rounding, whose tangent is not definite is no minimum: the shifted step leaves it, along a mode that
    // may find no other rest (a belt that tips out of its trough). The one of least residual is kept for that case.
    void remember_unstable() {
        if (!indefinite_ || relative_residual() > rounding_allowance * strict(settings_).tolerance) return;
        if (!unstable_ || relative_residual() < unstable_->residual) unstable_ = {q_, relative_residual()};
    }

    struct Equilibrium {
        Eigen::VectorXd q;
        double residual;  // relative
    };

    const std::optional<Equilibrium>& unstable() const { return unstable_; }

    Equilibrium here() const { return {q_, relative_residual()}; }

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
    bool indefinite_ = false;           // a smaller shift, or none, had no factor
    bool fast_ = false;                 // the last step was whole and the residual fell fast
    Eigen::VectorXd areas_, q_, residual_, step_;
    std::optional<Equilibrium> unstable_;
    double energy_ = 0, reference_ = 1, largest_ = 0, shift_ = 0;
};

NewtonOutcome outcome(Descent::Equilibrium at, int iteration, bool converged, const char* what,
                      const NewtonSettings& settings) {
    return {converged,
            fmt::format("residual {:.1e} {} {:.1e} after {} iterations{}", at.residual, converged ? "<=" : ">",
                        settings.tolerance, iteration, what),
            iteration,
            at.residual,
            settings.tolerance,
            std::move(at.q)};
}

// Within the rounding allowance.
NewtonOutcome allowed(Descent::Equilibrium at, int iteration, const char* what, NewtonSettings settings) {
    settings.tolerance *= rounding_allowance;
    return outcome(std::move(at), iteration, true, what, settings);
}

NewtonOutcome failed(const Descent& descent, int iteration, const char* what, const NewtonSettings& settings) {
    if (!descent.unstable()) return outcome(descent.here(), iteration, false, what, settings);
    return allowed(*descent.unstable(), iteration,
                   ": an unstable equilibrium, left by the iteration, which came to rest nowhere else", strict(settings));
}

// No step lowers the energy: an equilibrium to rounding, or none.
NewtonOutcome stopped(const Descent& descent, int iteration, const NewtonSettings& settings) {
    if (!descent.at_rounding()) return failed(descent, iteration, " (no step lowers the energy)", settings);
    return allowed(descent.here(), iteration, ", where the energy falls no further", settings);
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
        if (descent.small_enough()) return outcome(descent.here(), iteration, true, "", settings);
        if (iteration == settings.iterations) return failed(descent, iteration, "", settings);
        if (!descent.find_step()) return failed(descent, iteration, " (no shift made the tangent definite)", settings);
        descent.remember_unstable();
        descent.cap_step();
        if (!descent.take_step()) return stopped(descent, iteration, settings);
        descent.use_factor_again();
    }
}

}  // namespace swale
