#include "tests/verification/end_moment.h"

#include <cmath>

namespace swale::verification {

// The tangent at a quadrature point of the end: its two components in the plane and how the control points enter.
struct EndMoment::Tangent {
    int span;
    Eigen::Matrix<double, 16, 1> basis;
    double weight, x, z;
    double square() const { return x * x + z * z; }
};

EndMoment::EndMoment(const Patch& patch, double moment, double about)
    : patch_(patch),
      per_width_(moment / (patch.across.end() - patch.across.begin())),
      about_(about),
      across_(gauss_rule(patch.across, 4)),
      end_(patch.along.at(patch.along.end())) {}

template <class Visit>
void EndMoment::for_each_point(const ControlPoints& points, const Visit& visit) const {
    for (std::size_t k = 0; k < across_.points.size(); ++k) {
        const LinePoint& point = across_.points[k];
        Tangent tangent{point.basis.first, {}, point.weight, 0, 0};
        const SpanNodes nodes = patch_.nodes(end_.first, tangent.span);
        for (int a = 0; a < 16; ++a) {
            tangent.basis[a] = end_.slope[a / 4] * point.basis.value[a % 4];
            tangent.x += tangent.basis[a] * points(0, nodes[a]);
            tangent.z += tangent.basis[a] * points(2, nodes[a]);
        }
        visit(tangent);
    }
}

double EndMoment::energy(const ControlPoints& points) const {
    double sum = 0;
    for_each_point(points, [&](const Tangent& t) {
        const double c = std::cos(about_), s = std::sin(about_);
        sum -= per_width_ * t.weight * (about_ + std::atan2(c * t.z - s * t.x, c * t.x + s * t.z));
    });
    return sum;
}

void EndMoment::add_gradient(const ControlPoints& points, ControlPoints& gradient) const {
    for_each_point(points, [&](const Tangent& t) {
        // d(angle) = (x dz - z dx) / (x^2 + z^2)
        const double factor = -per_width_ * t.weight / t.square();
        const SpanNodes nodes = patch_.nodes(end_.first, t.span);
        for (int a = 0; a < 16; ++a) {
            gradient(0, nodes[a]) -= factor * t.z * t.basis[a];
            gradient(2, nodes[a]) += factor * t.x * t.basis[a];
        }
    });
}

void EndMoment::add_tangent(const ControlPoints& points, TangentSink& sink) const {
    for_each_point(points, [&](const Tangent& t) {
        // Second derivatives of the angle: 2 x z, z^2 - x^2, -2 x z, all over (x^2 + z^2)^2.
        const double factor = -per_width_ * t.weight / (t.square() * t.square());
        const Eigen::Matrix<double, 16, 16> product = factor * t.basis * t.basis.transpose();
        Eigen::Matrix3d bend = Eigen::Matrix3d::Zero();
        bend(0, 0) = 2 * t.x * t.z;
        bend(0, 2) = bend(2, 0) = t.z * t.z - t.x * t.x;
        bend(2, 2) = -2 * t.x * t.z;
        ElementTangent tangent;
        for (int a = 0; a < 16; ++a)
            for (int b = 0; b < 16; ++b) tangent.block<3, 3>(3 * a, 3 * b) = product(a, b) * bend;
        sink.add(patch_.nodes(end_.first, t.span), tangent);
    });
}

}  // namespace swale::verification
