#include "mesh/patch.h"

#include <Eigen/LU>

namespace swale {

SpanNodes Patch::nodes(int span_along, int span_across) const {
    SpanNodes nodes;
    for (int a = 0; a < 4; ++a)
        for (int b = 0; b < 4; ++b) nodes[4 * a + b] = index(span_along + a, span_across + b);
    return nodes;
}

SurfaceJet Patch::jet(const ControlPoints& points, double x, double y) const {
    const BasisValues bx = along.at(x), by = across.at(y);
    SurfaceJet jet;
    for (Eigen::Vector3d* v : {&jet.position, &jet.along, &jet.across, &jet.along2, &jet.across2, &jet.mixed}) v->setZero();
    for (int a = 0; a < 4; ++a)
        for (int b = 0; b < 4; ++b) {
            const auto point = points.col(index(bx.first + a, by.first + b));
            jet.position += bx.value[a] * by.value[b] * point;
            jet.along += bx.slope[a] * by.value[b] * point;
            jet.across += bx.value[a] * by.slope[b] * point;
            jet.along2 += bx.curvature[a] * by.value[b] * point;
            jet.across2 += bx.value[a] * by.curvature[b] * point;
            jet.mixed += bx.slope[a] * by.slope[b] * point;
        }
    return jet;
}

Eigen::MatrixXd Patch::net(const ControlPoints& points, int component) const {
    Eigen::MatrixXd net(along.size(), across.size());
    for (int i = 0; i < along.size(); ++i)
        for (int j = 0; j < across.size(); ++j) net(i, j) = points(component, index(i, j));
    return net;
}

namespace {

void put(const Eigen::MatrixXd& net, const Patch& patch, int component, ControlPoints& points) {
    for (int i = 0; i < patch.along.size(); ++i)
        for (int j = 0; j < patch.across.size(); ++j) points(component, patch.index(i, j)) = net(i, j);
}

}  // namespace

ControlPoints Patch::refine(const ControlPoints& points, const Patch& fine) const {
    const Eigen::MatrixXd lengthwise = along.refinement(fine.along), crosswise = across.refinement(fine.across);
    ControlPoints finer(3, fine.points());
    for (int c = 0; c < 3; ++c) put(lengthwise * net(points, c) * crosswise.transpose(), fine, c, finer);
    return finer;
}

ControlPoints Patch::meeting(const ControlPoints& values) const {
    const Eigen::PartialPivLU<Eigen::MatrixXd> lengthwise(along.collocation()), crosswise(across.collocation());
    ControlPoints points(3, values.cols());
    for (int c = 0; c < 3; ++c) {
        const Eigen::MatrixXd rows = lengthwise.solve(net(values, c));
        put(crosswise.solve(rows.transpose()).transpose(), *this, c, points);
    }
    return points;
}

}  // namespace swale
