#include "tests/solver/term_checks.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace swale::term_checks {

namespace {

// Multiplies the tangent by a direction, span by span.
class DirectionalTangent final : public TangentSink {
  public:
    explicit DirectionalTangent(const ControlPoints& direction)
        : product(ControlPoints::Zero(3, direction.cols())), direction_(direction) {}

    void add(const SpanNodes& nodes, const ElementTangent& tangent) override {
        add_block({nodes.begin(), nodes.end()}, tangent);
    }
    void add_block(const std::vector<int>& nodes, const Eigen::MatrixXd& tangent) override {
        const Eigen::MatrixXd full = tangent.selfadjointView<Eigen::Lower>();
        for (Eigen::Index r = 0; r < full.rows(); ++r)
            for (Eigen::Index c = 0; c < full.cols(); ++c)
                product(r % 3, nodes[r / 3]) += full(r, c) * direction_(c % 3, nodes[c / 3]);
    }

    ControlPoints product;

  private:
    const ControlPoints& direction_;
};

// The whole matrix.
class DenseTangent final : public TangentSink {
  public:
    explicit DenseTangent(int points) : matrix(Eigen::MatrixXd::Zero(3 * points, 3 * points)) {}

    void add(const SpanNodes& nodes, const ElementTangent& tangent) override {
        add_block({nodes.begin(), nodes.end()}, tangent);
    }
    void add_block(const std::vector<int>& nodes, const Eigen::MatrixXd& tangent) override {
        const Eigen::MatrixXd full = tangent.selfadjointView<Eigen::Lower>();
        for (Eigen::Index r = 0; r < full.rows(); ++r)
            for (Eigen::Index c = 0; c < full.cols(); ++c)
                matrix(3 * nodes[r / 3] + r % 3, 3 * nodes[c / 3] + c % 3) += full(r, c);
    }

    Eigen::MatrixXd matrix;
};

// Derivative at 0 of f along a line: central differences of steps h, h/2, h/4 with their h^2 and h^4 errors eliminated.
template <class Function>
auto derivative(const Function& f, double h) {
    const auto central = [&](double s) { return ((f(s) - f(-s)) / (2 * s)).eval(); };
    const auto d1 = central(h), d2 = central(h / 2), d3 = central(h / 4);
    const auto once1 = ((4 * d2 - d1) / 3).eval(), once2 = ((4 * d3 - d2) / 3).eval();
    return ((16 * once2 - once1) / 15).eval();
}

ControlPoints unit_direction(const ControlPoints& points, unsigned seed) {
    ControlPoints direction(3, points.cols());
    for (Eigen::Index k = 0; k < direction.size(); ++k)
        direction.data()[k] = std::sin(12.9898 * static_cast<double>(k + 1) + 78.233 * (seed + 1));
    return direction;
}

constexpr unsigned directions = 6;

}  // namespace

ControlPoints scatter(const Patch& patch, unsigned seed) {
    ControlPoints points(3, patch.points());
    std::uint32_t state = 747796405u * (seed + 1) + 2891336453u;
    for (Eigen::Index k = 0; k < points.size(); ++k) {
        state = 1664525u * state + 1013904223u;  // Knuth, The Art of Computer Programming 2, section 3.3.4
        points.data()[k] = 2 * (state / 4294967296.0) - 1;
    }
    return points;
}

ControlPoints crumpled(const Patch& patch, double amplitude, unsigned seed) {
    const double width = patch.across.end() - patch.across.begin(), length = patch.along.end() - patch.along.begin();
    ControlPoints points = patch.follow([&](double x, double y) {
        return Eigen::Vector3d(1.02 * x, 0.98 * y + 0.03 * x, 0.4 * y * y / width + 0.3 * x * x / length);
    });
    return moved(large_motion(), points) + amplitude * scatter(patch, seed);
}

double gradient_error(const Term& term, const ControlPoints& points, double step) {
    const ControlPoints gradient = gradient_of(term, points);
    double worst = 0;
    for (unsigned k = 0; k < directions; ++k) {
        const ControlPoints direction = unit_direction(points, k);
        const auto energy = [&](double s) { return Eigen::Array<double, 1, 1>(term.energy(points + s * direction)); };
        const double slope = derivative(energy, step)(0);
        worst = std::max(worst, std::abs(gradient.cwiseProduct(direction).sum() - slope) / std::abs(slope));
    }
    return worst;
}

double tangent_error(const Term& term, const ControlPoints& points, double step) {
    double worst = 0;
    for (unsigned k = 0; k < directions; ++k) {
        const ControlPoints direction = unit_direction(points, k);
        DirectionalTangent tangent(direction);
        term.add_tangent(points, tangent);
        const auto gradient = [&](double s) { return gradient_of(term, points + s * direction); };
        const ControlPoints change = derivative(gradient, step);
        worst = std::max(worst, (tangent.product - change).norm() / change.norm());
    }
    return worst;
}

Eigen::MatrixXd dense_tangent(const Term& term, const ControlPoints& points) {
    DenseTangent tangent(static_cast<int>(points.cols()));
    term.add_tangent(points, tangent);
    return tangent.matrix;
}

ControlPoints gradient_of(const Term& term, const ControlPoints& points) {
    ControlPoints gradient = ControlPoints::Zero(3, points.cols());
    term.add_gradient(points, gradient);
    return gradient;
}

Eigen::Isometry3d large_motion() {
    Eigen::Isometry3d motion = Eigen::Isometry3d::Identity();
    motion.translate(Eigen::Vector3d(130, -70, 45));
    motion.rotate(Eigen::AngleAxisd(2.3, Eigen::Vector3d(1, -2, 0.7).normalized()));
    return motion;
}

ControlPoints moved(const Eigen::Isometry3d& motion, const ControlPoints& points) {
    return (motion.linear() * points).colwise() + motion.translation();
}

}  // namespace swale::term_checks
