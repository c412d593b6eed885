#include "solver/shell/shell_energy.h"

#include "solver/shell/shell_point.h"

#include <utility>

namespace swale {

namespace {

// Derivatives of the 16 basis functions of a span at a point: columns ,x  ,y  ,xx  ,yy  ,xy; row 4 a + b.
using SpanJet = Eigen::Matrix<double, 16, 5>;

SpanJet span_jet(const BasisValues& bx, const BasisValues& by) {
    using Four = Eigen::Map<const Eigen::Vector4d>;
    const Four v(by.value.data()), s(by.slope.data()), c(by.curvature.data());
    SpanJet B;
    for (int a = 0; a < 4; ++a) {
        B.block<4, 1>(4 * a, 0) = bx.slope[a] * v;
        B.block<4, 1>(4 * a, 1) = bx.value[a] * s;
        B.block<4, 1>(4 * a, 2) = bx.curvature[a] * v;
        B.block<4, 1>(4 * a, 3) = bx.value[a] * c;
        B.block<4, 1>(4 * a, 4) = bx.slope[a] * s;
    }
    return B;
}

Eigen::Matrix<double, 3, 16> gather(const ControlPoints& points, const SpanNodes& nodes) {
    Eigen::Matrix<double, 3, 16> local;
    for (int k = 0; k < 16; ++k) local.col(k) = points.col(nodes[k]);
    return local;
}

// Adds w B H_ij B^T to each block, H_ij the 5 x 5 part of the point's tangent for components i and j.
void add_point_tangent(const SpanJet& B, const PointTangent& H, double weight, ElementTangent& tangent) {
    for (int k = 0; k < 6; ++k) {
        const auto [i, j] = tangent_blocks[k];
        Eigen::Matrix<double, 5, 5> part;
        for (int p = 0; p < 5; ++p)
            for (int q = 0; q < 5; ++q) part(p, q) = weight * H(3 * p + i, 3 * q + j);
        // Lazy: for sizes this small Eigen's blocked product costs more than the work.
        const SpanJet left = B.lazyProduct(part);
        tangent[k] += left.lazyProduct(B.transpose());
    }
}

}  // namespace

ShellEnergy::ShellEnergy(const Patch& patch, const Section& section, NaturalCurvature natural_curvature, int points_per_span)
    : patch_(patch),
      section_(section),
      natural_curvature_(std::move(natural_curvature)),
      along_(gauss_rule(patch.along, points_per_span)),
      across_(gauss_rule(patch.across, points_per_span)) {}

Eigen::Vector3d ShellEnergy::natural_at(double x, double y) const {
    return natural_curvature_ ? natural_curvature_(x, y) : Eigen::Vector3d::Zero();
}

// Calls visit(nodes, for_each_point) span by span; for_each_point(f) calls f(basis derivatives, natural curvature, weight).
template <class Visit>
void ShellEnergy::for_each_span(const Visit& visit) const {
    for (int s = 0; s < patch_.along.spans(); ++s)
        for (int t = 0; t < patch_.across.spans(); ++t) {
            const auto for_each_point = [&](const auto& at_point) {
                for (int k = 0; k < along_.per_span; ++k)
                    for (int l = 0; l < across_.per_span; ++l) {
                        const LinePoint& px = along_.points[s * along_.per_span + k];
                        const LinePoint& py = across_.points[t * across_.per_span + l];
                        at_point(span_jet(px.basis, py.basis), natural_at(px.position, py.position), px.weight * py.weight);
                    }
            };
            visit(patch_.nodes(s, t), for_each_point);
        }
}

double ShellEnergy::energy(const ControlPoints& points) const {
    double sum = 0;
    for_each_span([&](const SpanNodes& nodes, const auto& for_each_point) {
        const auto local = gather(points, nodes);
        for_each_point([&](const SpanJet& B, const Eigen::Vector3d& k0, double weight) {
            sum += weight * point_energy(local.lazyProduct(B), section_, k0);
        });
    });
    return sum;
}

void ShellEnergy::add_gradient(const ControlPoints& points, ControlPoints& gradient) const {
    for_each_span([&](const SpanNodes& nodes, const auto& for_each_point) {
        const auto local = gather(points, nodes);
        Eigen::Matrix<double, 3, 16> sum = Eigen::Matrix<double, 3, 16>::Zero();
        for_each_point([&](const SpanJet& B, const Eigen::Vector3d& k0, double weight) {
            sum += (weight * point_gradient(local.lazyProduct(B), section_, k0)).lazyProduct(B.transpose());
        });
        for (int k = 0; k < 16; ++k) gradient.col(nodes[k]) += sum.col(k);
    });
}

void ShellEnergy::add_tangent(const ControlPoints& points, TangentSink& sink) const {
    for_each_span([&](const SpanNodes& nodes, const auto& for_each_point) {
        const auto local = gather(points, nodes);
        ElementTangent tangent;
        for (auto& block : tangent) block.setZero();
        for_each_point([&](const SpanJet& B, const Eigen::Vector3d& k0, double weight) {
            add_point_tangent(B, point_tangent(local.lazyProduct(B), section_, k0), weight, tangent);
        });
        sink.add(nodes, tangent);
    });
}

}  // namespace swale
