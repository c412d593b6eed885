#include "solver/contact/contact_energy.h"

#include "solver/contact/contact_tangent.h"

#include <algorithm>
#include <limits>
#include <utility>

namespace swale {

// A span in the window with its control points.
struct ContactEnergy::Span {
    int along, across;
    SpanNodes nodes;
    Eigen::Matrix<double, 3, 16> control;
};

// One quadrature point of the contact rule.
struct ContactEnergy::Touch {
    const LinePoint& along;
    const LinePoint& across;
    double area;
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
void ContactEnergy::for_each_span(const ControlPoints& points, const Visit& visit) const {
    Span span;
    for (span.along = first_along_; span.along <= last_along_; ++span.along)
        for (span.across = first_across_; span.across <= last_across_; ++span.across) {
            span.nodes = patch_.nodes(span.along, span.across);
            for (int k = 0; k < 16; ++k) span.control.col(k) = points.col(span.nodes[k]);
            visit(span);
        }
}

// The clearance of a roll is convex, hence nowhere below its tangent plane; a span lies in the hull of its control points.
bool ContactEnergy::out_of_reach(const Span& span) const {
    const Eigen::Vector3d middle = span.control.rowwise().mean();
    const Clearance clearance = roll_.clearance(middle);
    const double lowest = (clearance.normal.transpose() * span.control).minCoeff() - clearance.normal.dot(middle);
    return clearance.distance + lowest - underside_ >= law_.corner;
}

template <class Visit>
void ContactEnergy::for_each_near_span(const ControlPoints& points, const Visit& visit) const {
    for_each_span(points, [&](const Span& span) {
        if (!out_of_reach(span)) visit(span);
    });
}

// The points of a span with the same x, of which it has along_.per_span.
template <class Visit>
void ContactEnergy::for_each_point(const Span& span, int line, const Visit& visit) const {
    const LinePoint& px = along_.points[span.along * along_.per_span + line];
    Eigen::Matrix<double, 3, 4> section = Eigen::Matrix<double, 3, 4>::Zero();
    for (int a = 0; a < 4; ++a) section += px.basis.value[a] * span.control.middleCols<4>(4 * a);
    for (int l = 0; l < across_.per_span; ++l) {
        const LinePoint& py = across_.points[span.across * across_.per_span + l];
        const Eigen::Vector3d position = section.lazyProduct(Eigen::Map<const Eigen::Vector4d>(py.basis.value.data()));
        visit(px, py, position, roll_.distance(position) - underside_);
    }
}

// Only the points where the law presses: few of those near a roll, and the clearance's derivatives cost more than it.
template <class Visit>
void ContactEnergy::for_each_touch(const Span& span, int line, const Visit& visit) const {
    for_each_point(span, line, [&](const LinePoint& px, const LinePoint& py, const Eigen::Vector3d& position, double gap) {
        if (gap < law_.corner) visit(Touch{px, py, px.weight * py.weight, roll_.clearance(position), gap});
    });
}

template <class Visit>
void ContactEnergy::for_each_touch(const ControlPoints& points, const Visit& visit) const {
    for_each_near_span(points, [&](const Span& span) {
        for (int line = 0; line < along_.per_span; ++line)
            for_each_touch(span, line, [&](const Touch& touch) { visit(span, touch); });
    });
}

double ContactEnergy::energy(const ControlPoints& points) const {
    double sum = 0;
    for_each_near_span(points, [&](const Span& span) {
        for (int line = 0; line < along_.per_span; ++line)
            for_each_point(span, line, [&](const LinePoint& px, const LinePoint& py, const Eigen::Vector3d&, double gap) {
                if (gap < law_.corner) sum += px.weight * py.weight * law_.energy(gap);
            });
    });
    return sum;
}

void ContactEnergy::add_gradient(const ControlPoints& points, ControlPoints& gradient) const {
    for_each_touch(points, [&](const Span& span, const Touch& touch) {
        // dE = -p dg dA with dg = normal . dx
        const Eigen::Vector3d push = -touch.area * law_.pressure(touch.gap) * touch.clearance.normal;
        for (int k = 0; k < 16; ++k)
            gradient.col(span.nodes[k]) += touch.along.basis.value[k / 4] * touch.across.basis.value[k % 4] * push;
    });
}

void ContactEnergy::add_tangent(const ControlPoints& points, TangentSink& sink) const {
    for_each_near_span(points, [&](const Span& span) {
        ContactTangent tangent;
        for (int line = 0; line < along_.per_span; ++line) {
            for_each_touch(span, line, [&](const Touch& touch) {
                // d2E = (k normal normal^T - p d2g) dA
                const Eigen::Vector3d& n = touch.clearance.normal;
                tangent.add(touch.across.basis, touch.area * (law_.stiffness(touch.gap) * n * n.transpose() -
                                                              law_.pressure(touch.gap) * touch.clearance.curvature));
            });
            tangent.close_line(along_.points[span.along * along_.per_span + line].basis);
        }
        if (!tangent.empty()) sink.add(span.nodes, tangent.result());
    });
}

Eigen::Vector3d ContactEnergy::force(const ControlPoints& points, double from) const {
    Eigen::Vector3d sum = Eigen::Vector3d::Zero();
    for_each_touch(points, [&](const Span&, const Touch& touch) {
        if (touch.along.position >= from) sum += touch.area * law_.pressure(touch.gap) * touch.clearance.normal;
    });
    return sum;
}

double ContactEnergy::pressure_at(const Eigen::Vector3d& position) const {
    return law_.pressure(roll_.distance(position) - underside_);
}

double ContactEnergy::smallest_gap(const ControlPoints& points) const {
    double gap = std::numeric_limits<double>::infinity();
    for_each_span(points, [&](const Span& span) {
        for (int line = 0; line < along_.per_span; ++line)
            for_each_point(span, line, [&](const LinePoint&, const LinePoint&, const Eigen::Vector3d&, double here) {
                gap = std::min(gap, here);
            });
    });
    return gap;
}

std::vector<std::pair<double, double>> ContactEnergy::line_force(const ControlPoints& points) const {
    std::vector<std::pair<double, double>> force;
    const int first = first_across_ * across_.per_span, last = (last_across_ + 1) * across_.per_span;
    for (int row = first; row < last; ++row) force.emplace_back(across_.points[row].position, 0.0);
    for_each_touch(points, [&](const Span&, const Touch& touch) {
        const auto row = &touch.across - across_.points.data() - first;
        force[row].second += touch.along.weight * law_.pressure(touch.gap);
    });
    return force;
}

}  // namespace swale
