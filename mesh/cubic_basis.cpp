#include "mesh/cubic_basis.h"

#include <algorithm>
#include <stdexcept>

namespace swale {

CubicBasis::CubicBasis(std::vector<double> breaks) : breaks_(std::move(breaks)) {
    if (breaks_.size() < 2) throw std::logic_error("a spline basis needs at least one span");
    if (std::adjacent_find(breaks_.begin(), breaks_.end(), std::greater_equal<>()) != breaks_.end())
        throw std::logic_error("the breaks of a spline basis must increase");
}

double CubicBasis::knot(int i) const {
    return breaks_[std::clamp(i - 3, 0, spans())];
}

std::vector<double> CubicBasis::knots() const {
    std::vector<double> all;
    for (int i = 0; i < size() + 4; ++i) all.push_back(knot(i));
    return all;
}

int CubicBasis::span_of(double x) const {
    const auto right = std::upper_bound(breaks_.begin(), breaks_.end(), x);
    return std::clamp(static_cast<int>(right - breaks_.begin()) - 1, 0, spans() - 1);
}

BasisValues CubicBasis::at(double x, int span) const {
    // Cox - de Boor: N_{i,p} = (x - t_i)/(t_{i+p} - t_i) N_{i,p-1} + (t_{i+p+1} - x)/(t_{i+p+1} - t_{i+1}) N_{i+1,p-1}.
    // level[p][k] is N_{span+3-p+k, p}; the knots of the span are t_{span+3} and t_{span+4}.
    std::array<std::array<double, 4>, 4> level{};
    level[0][0] = 1;
    for (int p = 1; p <= 3; ++p)
        for (int k = 0; k < p; ++k) {
            const double left = knot(span + 4 - p + k), right = knot(span + 4 + k);
            const double share = level[p - 1][k] / (right - left);
            level[p][k] += (right - x) * share;
            level[p][k + 1] += (x - left) * share;
        }
    BasisValues values;
    values.first = span;
    values.value = level[3];
    // N'_{i,p} = p [ N_{i,p-1}/(t_{i+p} - t_i) - N_{i+1,p-1}/(t_{i+p+1} - t_{i+1}) ], once for the slope, twice for the
    // curvature.
    std::array<double, 3> slope2{};  // derivatives of the three quadratics
    for (int k = 0; k < 2; ++k) {
        const double share = 2 * level[1][k] / (knot(span + 4 + k) - knot(span + 2 + k));
        slope2[k] -= share;
        slope2[k + 1] += share;
    }
    for (int k = 0; k < 3; ++k) {
        const double factor = 3 / (knot(span + 4 + k) - knot(span + 1 + k));
        values.slope[k] -= factor * level[2][k];
        values.slope[k + 1] += factor * level[2][k];
        values.curvature[k] -= factor * slope2[k];
        values.curvature[k + 1] += factor * slope2[k];
    }
    return values;
}

std::vector<double> CubicBasis::greville() const {
    std::vector<double> places;
    for (int i = 0; i < size(); ++i) places.push_back((knot(i + 1) + knot(i + 2) + knot(i + 3)) / 3);
    return places;
}

Eigen::MatrixXd CubicBasis::collocation() const {
    const std::vector<double> places = greville();
    Eigen::MatrixXd values = Eigen::MatrixXd::Zero(size(), size());
    for (int i = 0; i < size(); ++i) {
        const BasisValues here = at(places[i]);
        for (int a = 0; a < 4; ++a) values(i, here.first + a) = here.value[a];
    }
    return values;
}

CubicBasis CubicBasis::scaled(double factor) const {
    std::vector<double> moved = breaks_;
    for (double& x : moved) x *= factor;
    return CubicBasis(std::move(moved));
}

CubicBasis CubicBasis::halved() const {
    std::vector<double> finer;
    for (int s = 0; s < spans(); ++s) {
        finer.push_back(breaks_[s]);
        finer.push_back((breaks_[s] + breaks_[s + 1]) / 2);
    }
    finer.push_back(end());
    return CubicBasis(std::move(finer));
}

namespace {

// One Boehm step: the rows of `points` belong to `basis`; the result has one row more.
Eigen::MatrixXd insert_break(const CubicBasis& basis, double x, const Eigen::MatrixXd& points) {
    const std::vector<double> t = basis.knots();
    const int k = basis.span_of(x) + 3;  // t_k <= x < t_{k+1}
    Eigen::MatrixXd finer(points.rows() + 1, points.cols());
    for (int i = 0; i < finer.rows(); ++i) {
        if (i <= k - 3) {
            finer.row(i) = points.row(i);
        } else if (i > k) {
            finer.row(i) = points.row(i - 1);
        } else {
            const double share = (x - t[i]) / (t[i + 3] - t[i]);
            finer.row(i) = share * points.row(i) + (1 - share) * points.row(i - 1);
        }
    }
    return finer;
}

}  // namespace

Eigen::MatrixXd CubicBasis::refinement(const CubicBasis& fine) const {
    Eigen::MatrixXd points = Eigen::MatrixXd::Identity(size(), size());
    CubicBasis grown = *this;
    for (const double x : fine.breaks()) {
        if (std::binary_search(grown.breaks_.begin(), grown.breaks_.end(), x)) continue;
        points = insert_break(grown, x, points);
        grown.breaks_.insert(std::upper_bound(grown.breaks_.begin(), grown.breaks_.end(), x), x);
    }
    if (grown.breaks_ != fine.breaks_) throw std::logic_error("a refined basis must keep every break of the coarse one");
    return points;
}

}  // namespace swale
