#include "solver/transition/run_on.h"

#include "materials/membrane_law.h"
#include "mesh/quadrature.h"
#include "solver/strain/run_on_line.h"

#include <Eigen/LU>

#include <algorithm>
#include <utility>

namespace swale {

namespace {

using Eigen::MatrixXd;
using Eigen::VectorXd;

enum { x = 0, y = 1 };

// What the pulley's side of the section pulls with, per unstretched width: t = stretch N11 e_x + N12 r,y, and its derivatives.
struct Pull {
    Eigen::Vector2d t, by_stretch;
    Eigen::Matrix2d by_across;
};

Pull pull_at(const Eigen::Vector2d& across, double stretch, const Section& section) {
    const Eigen::Vector3d strain = frozen_strain(stretch, across), N = membrane_force(section, strain);
    const Eigen::Matrix3d tangent = membrane_tangent(section, strain);
    Eigen::Matrix<double, 3, 2> strain_by_across;
    strain_by_across << 0, 0, across.x(), across.y(), stretch, 0;
    const Eigen::Matrix<double, 3, 2> N_by_across = tangent * strain_by_across;
    const Eigen::Vector3d N_by_stretch = tangent * Eigen::Vector3d(stretch, 0, across.x());
    const Eigen::Vector2d e_x = Eigen::Vector2d::UnitX();
    return {stretch * N[0] * e_x + N[2] * across, (N[0] + stretch * N_by_stretch[0]) * e_x + N_by_stretch[2] * across,
            stretch * e_x * N_by_across.row(0) + across * N_by_across.row(2) + N[2] * Eigen::Matrix2d::Identity()};
}

// The same on the control values 2 j + component of the section: int N_j t dy.
struct LinePull {
    VectorXd force, by_stretch;
    MatrixXd by_section;
    double along() const { return force(Eigen::seq(x, Eigen::last, 2)).sum(); }
    double along_by_stretch() const { return by_stretch(Eigen::seq(x, Eigen::last, 2)).sum(); }
};

void add(const LinePoint& place, const Pull& pull, LinePull& line) {
    const int first = place.basis.first;
    for (int a = 0; a < 4; ++a) {
        const double share = place.weight * place.basis.value[a];
        line.force.segment<2>(2 * (first + a)) += share * pull.t;
        line.by_stretch.segment<2>(2 * (first + a)) += share * pull.by_stretch;
        for (int b = 0; b < 4; ++b)
            line.by_section.block<2, 2>(2 * (first + a), 2 * (first + b)) += share * place.basis.slope[b] * pull.by_across;
    }
}

LinePull line_pull(const Patch& patch, const ControlPoints& points, const Section& section, double stretch) {
    const int size = 2 * patch.across.size();
    LinePull line{VectorXd::Zero(size), VectorXd::Zero(size), MatrixXd::Zero(size, size)};
    for (const LinePoint& place : gauss_rule(patch.across, 4).points) {
        Eigen::Vector2d across = Eigen::Vector2d::Zero();
        for (int b = 0; b < 4; ++b) across += place.basis.slope[b] * points.block<2, 1>(0, place.basis.first + b);
        add(place, pull_at(across, stretch, section), line);
    }
    return line;
}

// The gradient of the potential at the section is the force that holds it; along the belt that is minus the belt's pull.
double stretch_that_carries(const Patch& patch, const Section& section, const ControlPoints& points,
                            const ControlPoints& gradient) {
    const double whole = -gradient.row(x).head(patch.across.size()).sum();
    double stretch = 1;
    for (int k = 0; k < 8; ++k) {
        const LinePull pull = line_pull(patch, points, section, stretch);
        stretch += (whole - pull.along()) / pull.along_by_stretch();
    }
    return stretch;
}

// Control values of the section as sums of its unknowns, which are the first of the system.
MatrixXd section_by_unknowns(const Patch& patch, const Supports& supports) {
    const int across = patch.across.size();
    MatrixXd by = MatrixXd::Zero(2 * across, 2 * across);
    int size = 0;
    for (int k = 0; k < 2 * across; ++k)
        for (const Supports::Share& share : supports.shares(patch.index(0, k / 2), k % 2)) {
            by(k, share.unknown) = share.weight;
            size = std::max(size, share.unknown + 1);
        }
    return by.leftCols(size);
}

// Integrals of the basis over the width at one component's control values [mm].
VectorXd widths(const Patch& patch, int component) {
    VectorXd widths = VectorXd::Zero(2 * patch.across.size());
    for (const LinePoint& place : gauss_rule(patch.across, 2).points)
        for (int b = 0; b < 4; ++b) widths[2 * (place.basis.first + b) + component] += place.weight * place.basis.value[b];
    return widths;
}

// What is wrong at the section with a stretch that carries the whole pull: the belt's force and the pulley's do not cancel.
struct Mismatch {
    MatrixXd by_unknowns;
    LinePull pull;
    VectorXd force;  // on the section's unknowns [N]
};

Mismatch mismatch(const System& system, const Section& section, const ControlPoints& points) {
    const ControlPoints gradient = system.full_gradient(points);
    const double stretch = stretch_that_carries(system.patch(), section, points, gradient);
    Mismatch found{
        section_by_unknowns(system.patch(), system.supports()), line_pull(system.patch(), points, section, stretch), {}};
    found.force =
        system.supports().restrict(gradient).head(found.by_unknowns.cols()) + found.by_unknowns.transpose() * found.pull.force;
    return found;
}

// The tangent condensed onto the section, and what moves the other unknowns with it. Springs on the section keep the factor
// positive definite; they are taken off again. Numbered backwards the section is the last.
class CondensedBelt {
  public:
    CondensedBelt(BandMatrix tangent, int section)
        : coupling_(tangent.entries().leftCols(section)),
          spring_(tangent.diagonal().head(section).maxCoeff()),
          factor_(backwards(std::move(tangent), section, spring_)) {}

    bool stable() const { return factor_.ok(); }

    MatrixXd stiffness() const {
        const int section = static_cast<int>(coupling_.cols());
        return factor_.condensed(section).reverse() - spring_ * MatrixXd::Identity(section, section);
    }

    // dq = -K^-1 B dp of the others, with B their coupling to the section.
    VectorXd others(const VectorXd& step, int unknowns) const {
        const Eigen::Index section = coupling_.cols();
        VectorXd right = VectorXd::Zero(unknowns - section);
        for (Eigen::Index j = 0; j < section; ++j)
            for (Eigen::Index i = section; i < j + coupling_.rows(); ++i) right[i - section] -= coupling_(i - j, j) * step[j];
        return factor_.solve(right.reverse()).reverse();
    }

  private:
    static BandMatrix backwards(BandMatrix tangent, int section, double spring) {
        tangent.diagonal().head(section).array() += spring;
        tangent.reverse();
        return tangent;
    }

    MatrixXd coupling_;
    double spring_;
    BandFactor factor_;
};

}  // namespace

Eigen::Matrix2Xd section_on_pulley(const Patch& patch, const ControlPoints& points) {
    return points.block(0, 0, 2, patch.across.size());
}

double run_on_stretch(const System& system, const Section& section, const ControlPoints& points) {
    return stretch_that_carries(system.patch(), section, points, system.full_gradient(points));
}

double run_on_departure(const System& system, const Section& section, const ControlPoints& points) {
    const Mismatch wrong = mismatch(system, section, points);
    const Eigen::Matrix3d& A = section.membrane;
    const VectorXd moduli = A(0, 0) * widths(system.patch(), x) + A(2, 2) * widths(system.patch(), y);
    return wrong.force.cwiseQuotient(wrong.by_unknowns.transpose() * moduli).cwiseAbs().maxCoeff();
}

std::optional<ControlPoints> run_on_step(const System& system, const Section& section, const ControlPoints& points) {
    const Mismatch wrong = mismatch(system, section, points);
    const MatrixXd& by = wrong.by_unknowns;
    const int size = static_cast<int>(by.cols());
    const CondensedBelt belt(system.tangent(points), size);
    if (!belt.stable()) return {};

    // Unknown are the section's step and that of the stretch; the mean of x is zero.
    VectorXd q = system.supports().project(points);
    const VectorXd mean = by.transpose() * widths(system.patch(), x);
    MatrixXd matrix = MatrixXd::Zero(size + 1, size + 1);
    matrix.topLeftCorner(size, size) = belt.stiffness() + by.transpose() * wrong.pull.by_section * by;
    matrix.col(size).head(size) = by.transpose() * wrong.pull.by_stretch;
    matrix.row(size).head(size) = mean.transpose();
    VectorXd right(size + 1);
    right << -wrong.force, -mean.dot(q.head(size));
    const VectorXd step = matrix.partialPivLu().solve(right).head(size);
    q.head(size) += step;
    q.tail(q.size() - size) += belt.others(step, system.unknowns());
    return system.supports().expand(q);
}

}  // namespace swale
