#include "solver/transition/run_on.h"

#include "mesh/quadrature.h"

#include <Eigen/Cholesky>
#include <Eigen/LU>

#include <algorithm>
#include <stdexcept>
#include <utility>
#include <vector>

namespace swale {

namespace {

using Eigen::MatrixXd;
using Eigen::VectorXd;

enum { x = 0, y = 1 };

// r,X = 3 (P1 - P0) / h at the begin of an open cubic knot vector, h its first span: column j is that of control point j.
Eigen::Matrix2Xd slopes(const Patch& patch, const ControlPoints& points) {
    const int across = patch.across.size();
    const double span = patch.along.breaks()[1] - patch.along.breaks()[0];
    return 3 / span * (points.block(0, across, 2, across) - points.block(0, 0, 2, across));
}

// The unknowns p of the section, which are the first of the system.
struct SectionUnknowns {
    std::vector<int> next;  // the same component's unknown in the next row of control points
    VectorXd along;         // 1 for x, 0 for y
    VectorXd mean;          // mean . p is the integral of the section's x over the width
    int size() const { return static_cast<int>(next.size()); }
};

VectorXd width_integral(const Patch& patch, const Supports& supports, int size) {
    ControlPoints weights = ControlPoints::Zero(3, patch.points());
    for (const LinePoint& place : gauss_rule(patch.across, 2).points)
        for (int b = 0; b < 4; ++b) weights(x, place.basis.first + b) += place.weight * place.basis.value[b];
    return supports.restrict(weights).head(size);
}

SectionUnknowns section_unknowns(const Patch& patch, const Supports& supports) {
    SectionUnknowns section;
    std::vector<double> along;
    for (int j = 0; j < patch.across.size(); ++j)
        for (const int component : {x, y}) {
            const int unknown = supports.plain_unknown(patch.index(0, j), component);
            if (unknown < 0) continue;  // follows others by symmetry, and so does its neighbour
            section.next.resize(std::max<std::size_t>(section.next.size(), unknown + 1), -1);
            along.resize(section.next.size());
            section.next[unknown] = supports.plain_unknown(patch.index(1, j), component);
            along[unknown] = component == x ? 1 : 0;
        }
    if (std::ranges::min(section.next) < section.size()) throw std::logic_error("the section's neighbours are not unknowns");
    section.along = VectorXd::Map(along.data(), section.size());
    section.mean = width_integral(patch, supports, section.size());
    return section;
}

// The tangent condensed onto the section and the next row of control points, and what moves the others with them.
class CondensedBelt {
  public:
    // Springs on the section keep the factor positive definite; they are taken off again. Numbered backwards, what is kept is
    // the last.
    CondensedBelt(BandMatrix tangent, int section, int kept)
        : coupling_(tangent.entries().leftCols(section)), factor_(backwards(tangent, section)) {
        if (!factor_.ok()) return;
        stiffness_ = factor_.condensed(kept).reverse();
        stiffness_.diagonal().head(section).array() -= spring_;
    }

    bool stable() const { return factor_.ok(); }

    // Row by row how the next row of control points follows the section: dq1 = -K11^-1 K10 dp.
    MatrixXd following() const {
        const Eigen::Index section = coupling_.cols(), next = stiffness_.rows() - section;
        const Eigen::LLT<MatrixXd> llt(stiffness_.bottomRightCorner(next, next));
        return -llt.solve(stiffness_.bottomLeftCorner(next, section));
    }

    // All other unknowns: dq = -K^-1 B dp with B the coupling to the section.
    VectorXd others(const VectorXd& step, int unknowns) const {
        const Eigen::Index section = coupling_.cols();
        VectorXd right = VectorXd::Zero(unknowns - section);
        for (Eigen::Index j = 0; j < section; ++j)
            for (Eigen::Index i = section; i < j + coupling_.rows(); ++i) right[i - section] -= coupling_(i - j, j) * step[j];
        return factor_.solve(right.reverse()).reverse();
    }

  private:
    BandMatrix backwards(BandMatrix& tangent, int section) {
        spring_ = tangent.diagonal().head(section).maxCoeff();
        tangent.diagonal().head(section).array() += spring_;
        tangent.reverse();
        return std::move(tangent);
    }

    MatrixXd coupling_;
    double spring_ = 0;
    BandFactor factor_;
    MatrixXd stiffness_;
};

// Unknowns of the first two rows of control points, which are the first of the system.
int unknowns_of_two_rows(const Patch& patch, const Supports& supports) {
    int count = 0;
    for (int p = 0; p < 2 * patch.across.size(); ++p)
        for (int component = 0; component < 3; ++component)
            for (const Supports::Share& share : supports.shares(p, component)) count = std::max(count, share.unknown + 1);
    return count;
}

// The section's step: for every unknown (q + dq)_next - (p + dp) = c, c = 0 across, and the mean of x is zero.
VectorXd section_step(const SectionUnknowns& section, const MatrixXd& following, const VectorXd& q) {
    const int size = section.size();
    MatrixXd matrix = MatrixXd::Zero(size + 1, size + 1);
    VectorXd right(size + 1);
    for (int k = 0; k < size; ++k) {
        matrix.row(k).head(size) = -following.row(section.next[k] - size);
        matrix(k, k) += 1;
        right[k] = q[section.next[k]] - q[k];
    }
    matrix.col(size).head(size) = section.along;
    matrix.row(size).head(size) = section.mean.transpose();
    right[size] = -section.mean.dot(q.head(size));
    return matrix.partialPivLu().solve(right).head(size);
}

}  // namespace

Eigen::Matrix2Xd section_on_pulley(const Patch& patch, const ControlPoints& points) {
    return points.block(0, 0, 2, patch.across.size());
}

double run_on_departure(const Patch& patch, const ControlPoints& points) {
    Eigen::Matrix2Xd slope = slopes(patch, points);
    slope.row(x).array() -= slope.row(x).mean();
    return slope.cwiseAbs().maxCoeff();
}

std::optional<ControlPoints> run_on_step(const System& system, const ControlPoints& points) {
    const Supports& supports = system.supports();
    const SectionUnknowns section = section_unknowns(system.patch(), supports);
    const int size = section.size();
    const CondensedBelt belt(system.tangent(points), size, unknowns_of_two_rows(system.patch(), supports));
    if (!belt.stable()) return {};
    VectorXd q = supports.project(points);
    const VectorXd step = section_step(section, belt.following(), q);
    q.head(size) += step;
    q.tail(q.size() - size) += belt.others(step, system.unknowns());
    return supports.expand(q);
}

}  // namespace swale
