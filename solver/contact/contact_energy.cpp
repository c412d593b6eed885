#include "solver/contact/contact_energy.h"

#include <algorithm>
#include <limits>
#include <utility>

namespace swale {

// One quadrature point of the contact rule.
struct ContactEnergy::Touch {
    int span_along, span_across;
    const LinePoint& along;
    const LinePoint& across;
    Eigen::Matrix<double, 16, 1> basis;
    double area;
    Eigen::Vector3d position;
    Clearance clearance;
    double gap;
};

ContactEnergy::ContactEnergy(const Patch& patch, const Roll& roll, const ContactLaw& law, double underside,
                             const ContactWindow& window, int along, int across)
    : patch_(patch),
      roll_(roll),
      law_(law),
      underside_(underside),
      along_(gauss_rule(patch.along, along)),
      across_(gauss_rule(patch.across, across)),
      first_along_(patch.along.span_of(window.x_begin)),
      last_along_(patch.along.span_of(window.x_end)),
      first_across_(patch.across.span_of(window.y_begin)),
      last_across_(patch.across.span_of(window.y_end)) {}

template <class Visit>
void ContactEnergy::for_each_point(const ControlPoints& points, const Visit& visit) const {
    for (int s = first_along_; s <= last_along_; ++s)
        for (int t = first_across_; t <= last_across_; ++t) {
            const SpanNodes nodes = patch_.nodes(s, t);
            Eigen::Matrix<double, 3, 16> local;
            for (int k = 0; k < 16; ++k) local.col(k) = points.col(nodes[k]);
            for (int k = 0; k < along_.per_span; ++k)
                for (int l = 0; l < across_.per_span; ++l) {
                    const LinePoint& px = along_.points[s * along_.per_span + k];
                    const LinePoint& py = across_.points[t * across_.per_span + l];
                    Eigen::Matrix<double, 16, 1> basis;
                    for (int a = 0; a < 16; ++a) basis[a] = px.basis.value[a / 4] * py.basis.value[a % 4];
                    const Eigen::Vector3d position = local * basis;
                    const Clearance clearance = roll_.clearance(position);
                    visit(Touch{s, t, px, py, basis, px.weight * py.weight, position, clearance,
                                clearance.distance - underside_});
                }
        }
}

// Only the points where the law presses.
template <class Visit>
void ContactEnergy::for_each_touch(const ControlPoints& points, const Visit& visit) const {
    for_each_point(points, [&](const Touch& touch) {
        if (touch.gap < law_.corner) visit(touch);
    });
}

double ContactEnergy::energy(const ControlPoints& points) const {
    double sum = 0;
    for_each_touch(points, [&](const Touch& touch) { sum += touch.area * law_.energy(touch.gap); });
    return sum;
}

void ContactEnergy::add_gradient(const ControlPoints& points, ControlPoints& gradient) const {
    for_each_touch(points, [&](const Touch& touch) {
        // dE = -p dg dA with dg = normal . dx
        const Eigen::Vector3d push = -touch.area * law_.pressure(touch.gap) * touch.clearance.normal;
        const SpanNodes nodes = patch_.nodes(touch.span_along, touch.span_across);
        for (int k = 0; k < 16; ++k) gradient.col(nodes[k]) += touch.basis[k] * push;
    });
}

void ContactEnergy::add_tangent(const ControlPoints& points, TangentSink& sink) const {
    ElementTangent tangent;
    int span_along = -1, span_across = -1;
    const auto flush = [&] {
        if (span_along >= 0) sink.add(patch_.nodes(span_along, span_across), tangent);
        for (auto& block : tangent) block.setZero();
    };
    for_each_touch(points, [&](const Touch& touch) {
        if (std::pair(touch.span_along, touch.span_across) != std::pair(span_along, span_across)) {
            flush();
            span_along = touch.span_along;
            span_across = touch.span_across;
        }
        // d2E = (k normal normal^T - p d2g) dA
        const Eigen::Vector3d& n = touch.clearance.normal;
        const Eigen::Matrix3d stiffness =
            touch.area * (law_.stiffness(touch.gap) * n * n.transpose() - law_.pressure(touch.gap) * touch.clearance.curvature);
        const Eigen::Matrix<double, 16, 16> product = touch.basis * touch.basis.transpose();
        for (int k = 0; k < 6; ++k) tangent[k] += stiffness(tangent_blocks[k][0], tangent_blocks[k][1]) * product;
    });
    flush();
}

Eigen::Vector3d ContactEnergy::force(const ControlPoints& points, double from) const {
    Eigen::Vector3d sum = Eigen::Vector3d::Zero();
    for_each_touch(points, [&](const Touch& touch) {
        if (touch.along.position >= from) sum += touch.area * law_.pressure(touch.gap) * touch.clearance.normal;
    });
    return sum;
}

double ContactEnergy::pressure_at(const Eigen::Vector3d& position) const {
    return law_.pressure(roll_.clearance(position).distance - underside_);
}

double ContactEnergy::smallest_gap(const ControlPoints& points) const {
    double gap = std::numeric_limits<double>::infinity();
    for_each_point(points, [&](const Touch& touch) { gap = std::min(gap, touch.gap); });
    return gap;
}

std::vector<std::pair<double, double>> ContactEnergy::line_force(const ControlPoints& points) const {
    std::vector<std::pair<double, double>> force;
    const int first = first_across_ * across_.per_span, last = (last_across_ + 1) * across_.per_span;
    for (int row = first; row < last; ++row) force.emplace_back(across_.points[row].position, 0.0);
    for_each_touch(points, [&](const Touch& touch) {
        const auto row = &touch.across - across_.points.data() - first;
        force[row].second += touch.along.weight * law_.pressure(touch.gap);
    });
    return force;
}

}  // namespace swale
