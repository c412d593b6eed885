#include "solver/equilibrium/system.h"

#include "mesh/quadrature.h"
#include "solver/equilibrium/dead_load.h"

#include <algorithm>
#include <utility>

namespace swale {

namespace {

// Adds element tangents to the band of the unknowns.
class BandSink final : public TangentSink {
  public:
    BandSink(const Supports& supports, BandMatrix& band) : supports_(supports), band_(band) {}

    void add(const SpanNodes& nodes, const ElementTangent& tangent) override {
        for (int k = 0; k < 6; ++k) {
            const auto [i, j] = tangent_blocks[k];
            for (int b = 0; b < 16; ++b)
                for (int a = i == j ? b : 0; a < 16; ++a)
                    add_pair(supports_.shares(nodes[a], i), supports_.shares(nodes[b], j), tangent[k](a, b),
                             i == j && a == b);
        }
    }

  private:
    // A pair of different components stands in the full matrix twice, so a tie of both to one unknown counts twice.
    void add_pair(const std::vector<Supports::Share>& rows, const std::vector<Supports::Share>& columns, double value, bool same) {
        for (const auto& row : rows)
            for (const auto& column : columns) {
                if (same && row.unknown < column.unknown) continue;
                const bool twice = !same && row.unknown == column.unknown;
                band_.add(row.unknown, column.unknown, (twice ? 2 : 1) * row.weight * column.weight * value);
            }
    }

    const Supports& supports_;
    BandMatrix& band_;
};

// Farthest distance of two unknowns that share a span.
int half_bandwidth_of(const Patch& patch, const Supports& supports) {
    int widest = 0;
    for (int s = 0; s < patch.along.spans(); ++s)
        for (int t = 0; t < patch.across.spans(); ++t) {
            int lowest = supports.unknowns(), highest = -1;
            for (const int node : patch.nodes(s, t))
                for (int c = 0; c < 3; ++c)
                    for (const auto& share : supports.shares(node, c)) {
                        lowest = std::min(lowest, share.unknown);
                        highest = std::max(highest, share.unknown);
                    }
            widest = std::max(widest, highest - lowest);
        }
    return widest;
}

}  // namespace

System::System(const Patch& patch, Supports supports)
    : patch_(patch), supports_(std::move(supports)), half_bandwidth_(half_bandwidth_of(patch_, supports_)) {}

double System::energy(const Eigen::VectorXd& q) const {
    const ControlPoints points = supports_.expand(q);
    double sum = 0;
    for (const auto& term : terms_) sum += term->energy(points);
    return sum;
}

ControlPoints System::full_gradient(const ControlPoints& points) const {
    ControlPoints gradient = ControlPoints::Zero(3, patch_.points());
    for (const auto& term : terms_) term->add_gradient(points, gradient);
    return gradient;
}

BandMatrix System::empty_band() const { return {supports_.unknowns(), half_bandwidth_}; }

BandMatrix System::tangent(const ControlPoints& points) const {
    BandMatrix band = empty_band();
    BandSink sink(supports_, band);
    for (const auto& term : terms_) term->add_tangent(points, sink);
    return band;
}

Eigen::VectorXd System::areas() const {
    const Eigen::VectorXd control = control_areas(patch_);
    Eigen::VectorXd areas = Eigen::VectorXd::Zero(unknowns());
    for (int p = 0; p < patch_.points(); ++p)
        for (int c = 0; c < 3; ++c)
            for (const auto& share : supports_.shares(p, c)) areas[share.unknown] += share.weight * share.weight * control[p];
    return areas;
}

BandMatrix System::area_matrix() const {
    BandMatrix band = empty_band();
    BandSink sink(supports_, band);
    const LineRule along = gauss_rule(patch_.along, 4), across = gauss_rule(patch_.across, 4);
    for (int s = 0; s < patch_.along.spans(); ++s)
        for (int t = 0; t < patch_.across.spans(); ++t) {
            Eigen::Matrix<double, 16, 16> product = Eigen::Matrix<double, 16, 16>::Zero();
            for (int k = 0; k < 16; ++k) {
                const LinePoint& px = along.points[4 * s + k / 4];
                const LinePoint& py = across.points[4 * t + k % 4];
                Eigen::Matrix<double, 16, 1> N;
                for (int a = 0; a < 16; ++a) N[a] = px.basis.value[a / 4] * py.basis.value[a % 4];
                product += px.weight * py.weight * N * N.transpose();
            }
            ElementTangent blocks;
            for (auto& block : blocks) block.setZero();
            for (const int diagonal : {0, 3, 5}) blocks[diagonal] = product;
            sink.add(patch_.nodes(s, t), blocks);
        }
    return band;
}

}  // namespace swale
