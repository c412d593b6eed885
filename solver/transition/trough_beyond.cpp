#include "solver/transition/trough_beyond.h"

#include "solver/equilibrium/chain_stiffness.h"

#include <map>
#include <utility>

namespace swale {

namespace {

using Eigen::MatrixXd;
using Eigen::VectorXd;

// Components of the last two rows of control points (3 * place in these rows + component) that are unknowns of their own, in
// the order of the unknowns: the row that gives the slope, then the last row.
std::vector<int> free_components(const Patch& patch, const Supports& supports) {
    const int across = patch.across.size(), first = patch.index(patch.along.size() - 2, 0);
    std::map<int, int> component_of;
    for (int k = 0; k < 6 * across; ++k) {
        const int unknown = supports.plain_unknown(first + k / 3, k % 3);
        if (unknown >= 0) component_of.try_emplace(unknown, k);
    }
    std::vector<int> free;
    for (const auto& [unknown, component] : component_of) free.push_back(component);
    return free;
}

// The bay condensed onto its free end; empty if it is not stable with that end held. Extra springs there keep the factor
// positive definite; they are taken off again.
std::optional<MatrixXd> end_stiffness(const System& free_bay, const ControlPoints& points, int size) {
    BandMatrix tangent = free_bay.tangent(points);
    const double spring = tangent.diagonal().tail(size).maxCoeff();
    tangent.diagonal().tail(size).array() += spring;
    const BandFactor factor(std::move(tangent));
    if (!factor.ok()) return {};
    MatrixXd stiffness = factor.condensed(size);
    stiffness.diagonal().array() -= spring;
    return stiffness;
}

// The mirror image behind the joint: x changes sign, the slope goes on, so its inner row is 2 r1 - r2.
MatrixXd turn(const std::vector<int>& free) {
    const int half = static_cast<int>(free.size()) / 2;
    MatrixXd turned = MatrixXd::Zero(2 * half, 2 * half);
    for (int k = 0; k < half; ++k) {
        const double sign = free[k] % 3 == 0 ? -1 : 1;
        turned(k, k) = -sign;
        turned(k, half + k) = 2 * sign;
        turned(half + k, half + k) = sign;
    }
    return turned;
}

// Rows (r2, r1) of the bay from those of the belt, whose last span is 1/ratio times as long, for the same slope.
MatrixXd same_slope(int size, double ratio) {
    const int half = size / 2;
    MatrixXd map = MatrixXd::Identity(size, size);
    map.topLeftCorner(half, half) *= ratio;
    map.topRightCorner(half, half).diagonal().array() = 1 - ratio;
    return map;
}

double last_span(const CubicBasis& along) {
    return along.end() - along.breaks()[along.spans() - 1];
}

// What the last two rows do when the belt moves along itself: position by r', slope by r''. The slope is 3 (r1 - r2) / span.
VectorXd shift_along_itself(const TroughBay& bay, const std::vector<int>& free, double span) {
    const int across = bay.patch.across.size();
    const BasisValues at_end = bay.patch.along.at(bay.patch.along.end());
    ControlPoints moved(3, 2 * across);
    for (int j = 0; j < across; ++j) {
        Eigen::Vector3d slope = Eigen::Vector3d::Zero(), curvature = Eigen::Vector3d::Zero();
        for (int a = 0; a < 4; ++a) {
            const auto point = bay.points.col(bay.patch.index(at_end.first + a, j));
            slope += at_end.slope[a] * point;
            curvature += at_end.curvature[a] * point;
        }
        moved.col(j) = slope - span / 3 * curvature;
        moved.col(across + j) = slope;
    }
    VectorXd shift(free.size());
    for (std::size_t k = 0; k < free.size(); ++k) shift[k] = moved.reshaped()[free[k]];
    return shift;
}

// Nothing holds a belt on frictionless rolls from moving along itself, but on a grid the knots do a little, to either side:
// P^T K P with P = I - t t^T / t.t.
MatrixXd without_hold_along(const MatrixXd& stiffness, const VectorXd& t) {
    const MatrixXd P = MatrixXd::Identity(t.size(), t.size()) - t * t.transpose() / t.squaredNorm();
    return P.transpose() * stiffness * P;
}

// Where the belt's last two rows lie in the periodic state, its end at `end`.
VectorXd rest_position(const TroughBay& bay, double ratio, double end) {
    const int across = bay.patch.across.size(), rows = bay.patch.along.size();
    ControlPoints rest(3, 2 * across);
    for (int j = 0; j < across; ++j) {
        const Eigen::Vector3d position = bay.points.col(bay.patch.index(rows - 1, j));
        rest.col(j) = position - (position - bay.points.col(bay.patch.index(rows - 2, j))) / ratio;
        rest.col(across + j) = position;
    }
    rest.row(0).array() += end - bay.points(0, bay.patch.index(rows - 1, 0));
    return rest.reshaped();
}

}  // namespace

std::optional<JointStiffness> joint_stiffness(const TransitionCase& transition, const TroughBay& bay, Parity parity) {
    const System even = free_bay(transition, bay, SetPlane::symmetric, parity);
    const System odd = free_bay(transition, bay, SetPlane::antisymmetric, parity);
    const std::vector<int> free = free_components(bay.patch, even.supports());
    const int size = static_cast<int>(free.size());
    const auto symmetric = end_stiffness(even, bay.points, size);
    auto antisymmetric = end_stiffness(odd, bay.points, size);
    if (!symmetric || !antisymmetric) return {};
    const bool along = parity == Parity::symmetric;
    const VectorXd shift = shift_along_itself(bay, free, last_span(bay.patch.along));
    if (along) *antisymmetric = without_hold_along(*antisymmetric, shift);
    std::optional<MatrixXd> chain = endless_chain_stiffness({*symmetric, *antisymmetric, turn(free)});
    if (!chain) return {};
    if (along) *chain = without_hold_along(*chain, shift);
    return JointStiffness{free, std::move(*chain), -even.supports().restrict(bay.gradient).tail(size)};
}

TroughBeyond::TroughBeyond(const TroughBay& bay, const JointStiffness& joint, const Patch& belt, double end) {
    for (int k = 0; k < 2 * belt.across.size(); ++k) nodes_.push_back(belt.index(belt.along.size() - 2, 0) + k);
    const double ratio = last_span(bay.patch.along) / last_span(belt.along);
    take_stiffness(joint, ratio);
    rest_ = rest_position(bay, ratio, end);
}

void TroughBeyond::take_stiffness(const JointStiffness& joint, double ratio) {
    const std::vector<int>& free = joint.components;
    const int size = static_cast<int>(free.size()), all = 3 * static_cast<int>(nodes_.size());
    const MatrixXd map = same_slope(size, ratio);
    const MatrixXd stiffness = map.transpose() * joint.matrix * map;
    const VectorXd force = map.transpose() * joint.force;
    stiffness_ = MatrixXd::Zero(all, all);
    force_ = VectorXd::Zero(all);
    for (int a = 0; a < size; ++a) {
        force_[free[a]] = force[a];
        for (int b = 0; b < size; ++b) stiffness_(free[a], free[b]) = stiffness(a, b);
    }
}

VectorXd TroughBeyond::deviation(const ControlPoints& points) const {
    return points.middleCols(nodes_.front(), nodes_.size()).reshaped() - rest_;
}

double TroughBeyond::energy(const ControlPoints& points) const {
    const VectorXd v = deviation(points);
    return force_.dot(v) + v.dot(stiffness_ * v) / 2;
}

void TroughBeyond::add_gradient(const ControlPoints& points, ControlPoints& gradient) const {
    gradient.middleCols(nodes_.front(), nodes_.size()).reshaped() += force_ + stiffness_ * deviation(points);
}

void TroughBeyond::add_tangent(const ControlPoints&, TangentSink& sink) const {
    sink.add_block(nodes_, stiffness_);
}

}  // namespace swale
