#include "tests/verification/load_path.h"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <optional>
#include <utility>

// LAPACK's band factors with row exchanges: the tangent is indefinite between limit points.
extern "C" {
void dgbtrf_(const int* m, const int* n, const int* kl, const int* ku, double* ab, const int* ldab, int* pivots, int* info);
void dgbtrs_(const char* trans, const int* n, const int* kl, const int* ku, const int* nrhs, const double* ab, const int* ldab,
             const int* pivots, double* b, const int* ldb, int* info);
}

namespace swale::verification {

namespace {

// A symmetric band, indefinite or not, solved with two right sides at a time.
class IndefiniteFactor {
  public:
    explicit IndefiniteFactor(const BandMatrix& lower)
        : n_(lower.size()), kd_(lower.half_bandwidth()), ld_(3 * kd_ + 1), ab_(Eigen::MatrixXd::Zero(ld_, n_)), pivots_(n_) {
        // Entry (i, j) stands at row 2 kd + i - j; the first kd rows are room for the exchanges.
        for (int j = 0; j < n_; ++j)
            for (int i = j; i < std::min(n_, j + kd_ + 1); ++i)
                ab_(2 * kd_ + i - j, j) = ab_(2 * kd_ + j - i, i) = lower.entries()(i - j, j);
        dgbtrf_(&n_, &n_, &kd_, &kd_, ab_.data(), &ld_, pivots_.data(), &info_);
    }
    bool ok() const { return info_ == 0; }
    Eigen::MatrixXd solve(Eigen::MatrixXd right) const {
        const int sides = static_cast<int>(right.cols());
        int info = 0;
        dgbtrs_("N", &n_, &kd_, &kd_, &sides, ab_.data(), &ld_, pivots_.data(), right.data(), &n_, &info);
        return right;
    }

  private:
    int n_, kd_, ld_, info_ = 0;
    Eigen::MatrixXd ab_;
    std::vector<int> pivots_;
};

struct Place {
    Eigen::VectorXd q;
    double load = 0;
};

class Follower {
  public:
    Follower(const PointLoadedShell& shell, const PathSettings& settings)
        : system_(shell.free_system()), unit_(shell.unit_load()), settings_(settings), length_(settings.step) {}

    // One step on, shorter after a failure and longer again after a quick one.
    Place next(const Place& from) {
        for (int attempt = 0; attempt < 12; ++attempt, length_ /= 2) {
            int iterations = 0;
            const std::optional<Place> reached = corrected(from, predicted(from), iterations);
            if (!reached) continue;
            last_ = reached->q - from.q;
            length_ = std::min(settings_.step, length_ * std::sqrt(4.0 / std::max(1, iterations)));
            return *reached;
        }
        FAIL("the path of equilibria could not be followed at load ", from.load);
        return from;
    }

    LoadedState state(const Place& at) const { return {at.load, system_.supports().expand(at.q)}; }

  private:
    IndefiniteFactor factor(const Place& at) const {
        return IndefiniteFactor(system_.tangent(system_.supports().expand(at.q)));
    }

    // K v = f; along v by the length, forward in the sense of the step before.
    Place predicted(const Place& from) const {
        const Eigen::VectorXd v = factor(from).solve(unit_);
        const bool back = last_.size() > 0 && last_.dot(v) < 0;
        const double load = (back ? -1 : 1) * length_ / v.norm();
        return {from.q + load * v, from.load + load};
    }

    // K dq = -r + dload f with dq normal to the step so far.
    std::optional<Place> corrected(const Place& from, Place at, int& iterations) const {
        for (iterations = 0; iterations < settings_.iterations; ++iterations) {
            const ControlPoints gradient = system_.full_gradient(system_.supports().expand(at.q));
            const Eigen::VectorXd residual = system_.supports().restrict(gradient) - at.load * unit_;
            if (residual.norm() < 1e-8 * gradient.norm()) return at;
            const IndefiniteFactor tangent = factor(at);
            if (!tangent.ok()) return {};
            Eigen::MatrixXd sides(residual.size(), 2);
            sides << -residual, unit_;
            const Eigen::MatrixXd parts = tangent.solve(sides);
            const Eigen::VectorXd step = at.q - from.q;
            const double load = -step.dot(parts.col(0)) / step.dot(parts.col(1));
            at = {at.q + parts.col(0) + load * parts.col(1), at.load + load};
            if ((at.q - from.q).norm() > 3 * length_) return {};
        }
        return {};
    }

    const System& system_;
    Eigen::VectorXd unit_, last_;
    PathSettings settings_;
    double length_;
};

}  // namespace

std::vector<LoadedState> follow_path(const PointLoadedShell& shell, const LoadedState& start, const PathSettings& settings,
                                     const std::function<bool(const LoadedState&)>& complete) {
    Follower follower(shell, settings);
    Place at{shell.free_system().supports().project(start.points), start.load};
    std::vector<LoadedState> path{start};
    for (int step = 0; step < settings.steps && !complete(path.back()); ++step) {
        at = follower.next(at);
        path.push_back(follower.state(at));
    }
    REQUIRE_MESSAGE(complete(path.back()), "the path is not complete after ", settings.steps, " steps");
    return path;
}

std::vector<double> turning_values(const std::vector<double>& f) {
    std::vector<double> values;
    for (std::size_t k = 1; k + 1 < f.size(); ++k) {
        const double before = f[k] - f[k - 1], after = f[k + 1] - f[k];
        if (before * after >= 0) continue;
        // Vertex of the parabola through (-1, f[k-1]), (0, f[k]), (1, f[k+1]).
        const double slope = (before + after) / 2, bend = after - before;
        values.push_back(f[k] - slope * slope / (2 * bend));
    }
    return values;
}

}  // namespace swale::verification
