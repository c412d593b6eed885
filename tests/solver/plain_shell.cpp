#include "tests/solver/plain_shell.h"

#include "solver/shell/shell_point.h"

#include <utility>

namespace swale {

namespace {

// Derivatives of the 16 basis functions of a span at a point: columns ,x  ,y  ,xx  ,yy  ,xy.
using SpanJet = Eigen::Matrix<double, 16, 5>;

SpanJet span_jet(const BasisValues& along, const BasisValues& across) {
    SpanJet B;
    for (int a = 0; a < 4; ++a)
        for (int b = 0; b < 4; ++b)
            B.row(4 * a + b) << along.slope[a] * across.value[b], along.value[a] * across.slope[b],
                along.curvature[a] * across.value[b], along.value[a] * across.curvature[b], along.slope[a] * across.slope[b];
    return B;
}

}  // namespace

PlainShell::PlainShell(const Patch& patch, const Section& section, NaturalCurvature natural_curvature, int points_per_span)
    : PlainShell(patch, section, std::move(natural_curvature), gauss_rule(patch.along, points_per_span),
                 gauss_rule(patch.across, points_per_span)) {}

PlainShell::PlainShell(const Patch& patch, const Section& section, NaturalCurvature natural_curvature, LineRule along,
                       LineRule across)
    : patch_(patch),
      section_(section),
      natural_curvature_(std::move(natural_curvature)),
      along_(std::move(along)),
      across_(std::move(across)) {}

template <class Visit>
void PlainShell::for_each_point(const ControlPoints& points, const Visit& visit) const {
    for (const LinePoint& px : along_.points)
        for (const LinePoint& py : across_.points) {
            const SpanNodes nodes = patch_.nodes(px.basis.first, py.basis.first);
            const SpanJet B = span_jet(px.basis, py.basis);
            visit(nodes, B, points(Eigen::all, nodes) * B, natural_curvature_(px.position, py.position), px.weight * py.weight);
        }
}

double PlainShell::energy(const ControlPoints& points) const {
    double sum = 0;
    for_each_point(points, [&](const SpanNodes&, const SpanJet&, const PointJet& jet, const Eigen::Vector3d& k0,
                               double weight) { sum += weight * point_energy(jet, section_, k0); });
    return sum;
}

void PlainShell::add_gradient(const ControlPoints& points, ControlPoints& gradient) const {
    for_each_point(
        points, [&](const SpanNodes& nodes, const SpanJet& B, const PointJet& jet, const Eigen::Vector3d& k0, double weight) {
            gradient(Eigen::all, nodes) += weight * point_gradient(jet, section_, k0) * B.transpose();
        });
}

void PlainShell::add_tangent(const ControlPoints& points, TangentSink& sink) const {
    for_each_point(
        points, [&](const SpanNodes& nodes, const SpanJet& B, const PointJet& jet, const Eigen::Vector3d& k0, double weight) {
            Eigen::Matrix<double, 15, 48> of_jet = Eigen::Matrix<double, 15, 48>::Zero();
            for (int p = 0; p < 5; ++p)
                for (int a = 0; a < 16; ++a) of_jet.block<3, 3>(3 * p, 3 * a).diagonal().setConstant(B(a, p));
            sink.add(nodes, weight * of_jet.transpose() * point_tangent(jet, section_, k0) * of_jet);
        });
}

}  // namespace swale
