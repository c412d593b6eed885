#include "solver/equilibrium/system.h"

#include "mesh/quadrature.h"
#include "solver/equilibrium/dead_load.h"
#include "solver/equilibrium/stopwatch.h"

#include <algorithm>
#include <stdexcept>
#include <utility>

namespace swale {

namespace {

// Adds element tangents to the band of the unknowns.
class BandSink final : public TangentSink {
  public:
    BandSink(const Supports& supports, BandMatrix& band) : supports_(supports), band_(band) {}

    void add(const SpanNodes& nodes, const ElementTangent& tangent) override {
        Unknowns unknowns;
        bool plain = true;
        for (int c = 0; c < 3; ++c)
            for (int a = 0; a < 16; ++a) {
                unknowns[c][a] = supports_.plain_unknown(nodes[a], c);
                plain = plain && unknowns[c][a] != Supports::combined;
            }
        for (int k = 0; k < 6; ++k)
            plain ? add_plain(unknowns, tangent_blocks[k], tangent[k]) : add_combined(nodes, tangent_blocks[k], tangent[k]);
    }

    void add_block(const std::vector<int>& nodes, const Eigen::MatrixXd& tangent) override {
        const int size = 3 * static_cast<int>(nodes.size());
        if (tangent.rows() != size || tangent.cols() != size)
            throw std::logic_error("a tangent block has another size than its control points");
        for (int column = 0; column < size; ++column)
            for (int row = column; row < size; ++row)
                add_pair(supports_.shares(nodes[row / 3], row % 3), supports_.shares(nodes[column / 3], column % 3),
                         tangent(row, column), row == column);
    }

  private:
    using Unknowns = std::array<std::array<int, 16>, 3>;
    using Block = Eigen::Matrix<double, 16, 16>;

    // A pair of different components stands in the full matrix twice, so a tie of both to one unknown counts twice.
    void add_plain(const Unknowns& unknowns, const std::array<int, 2>& components, const Block& block) {
        const auto [i, j] = components;
        // Entry (r, c), r >= c, of the band stands at c * half_bandwidth + r.
        double* entries = band_.entries().data();
        const Eigen::Index step = band_.half_bandwidth();
        for (int b = 0; b < 16; ++b) {
            const int column = unknowns[j][b];
            if (column < 0) continue;
            const Eigen::Index below = column * step;
            for (int a = i == j ? b : 0; a < 16; ++a) {
                const int row = unknowns[i][a];
                if (row > column)
                    entries[below + row] += block(a, b);
                else if (row == column)
                    entries[below + row] += i == j && a == b ? block(a, b) : 2 * block(a, b);
                else if (row >= 0)
                    entries[row * step + column] += block(a, b);
            }
        }
    }

    void add_combined(const SpanNodes& nodes, const std::array<int, 2>& components, const Block& block) {
        const auto [i, j] = components;
        for (int b = 0; b < 16; ++b)
            for (int a = i == j ? b : 0; a < 16; ++a)
                add_pair(supports_.shares(nodes[a], i), supports_.shares(nodes[b], j), block(a, b), i == j && a == b);
    }

    void add_pair(const std::vector<Supports::Share>& rows, const std::vector<Supports::Share>& columns, double value,
                  bool same) {
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

// Farthest distance of two unknowns that the control points depend on.
template <class Nodes>
int reach(const Nodes& nodes, const Supports& supports) {
    int lowest = supports.unknowns(), highest = -1;
    for (const int node : nodes)
        for (int c = 0; c < 3; ++c)
            for (const auto& share : supports.shares(node, c)) {
                lowest = std::min(lowest, share.unknown);
                highest = std::max(highest, share.unknown);
            }
    return std::max(0, highest - lowest);
}

int half_bandwidth_of(const Patch& patch, const Supports& supports) {
    int widest = 0;
    for (int s = 0; s < patch.along.spans(); ++s)
        for (int t = 0; t < patch.across.spans(); ++t) widest = std::max(widest, reach(patch.nodes(s, t), supports));
    return widest;
}

// Integrals of N_a N_b over each span; degree six is exact with four Gauss points.
std::vector<Eigen::Matrix4d> span_products(const CubicBasis& basis) {
    std::vector<Eigen::Matrix4d> products(basis.spans(), Eigen::Matrix4d::Zero());
    const LineRule rule = gauss_rule(basis, 4);
    for (std::size_t k = 0; k < rule.points.size(); ++k) {
        const Eigen::Map<const Eigen::Vector4d> N(rule.points[k].basis.value.data());
        products[k / 4] += rule.points[k].weight * N * N.transpose();
    }
    return products;
}

}  // namespace

System::System(const Patch& patch, Supports supports)
    : patch_(patch), supports_(std::move(supports)), half_bandwidth_(half_bandwidth_of(patch_, supports_)) {}

void System::add(std::shared_ptr<const Term> term, TermKind kind) {
    half_bandwidth_ = std::max(half_bandwidth_, reach(term->coupled_points(), supports_));
    terms_.push_back({std::move(term), kind});
}

template <class Work>
void System::for_each_term(TermTimes* times, const Work& work) const {
    TermTimes unread;
    for (const Entry& entry : terms_) timed((times ? *times : unread).of(entry.kind), [&] { work(*entry.term); });
}

double System::energy(const Eigen::VectorXd& q, TermTimes* times) const {
    const ControlPoints points = supports_.expand(q);
    double sum = 0;
    for_each_term(times, [&](const Term& term) { sum += term.energy(points); });
    return sum;
}

ControlPoints System::full_gradient(const ControlPoints& points, TermTimes* times) const {
    ControlPoints gradient = ControlPoints::Zero(3, patch_.points());
    for_each_term(times, [&](const Term& term) { term.add_gradient(points, gradient); });
    return gradient;
}

BandMatrix System::empty_band() const {
    return {supports_.unknowns(), half_bandwidth_};
}

BandMatrix System::tangent(const ControlPoints& points, TermTimes* times) const {
    BandMatrix band = empty_band();
    BandSink sink(supports_, band);
    for_each_term(times, [&](const Term& term) { term.add_tangent(points, sink); });
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
    const auto along = span_products(patch_.along), across = span_products(patch_.across);
    ElementTangent blocks;
    for (auto& block : blocks) block.setZero();
    for (int s = 0; s < patch_.along.spans(); ++s)
        for (int t = 0; t < patch_.across.spans(); ++t) {
            for (int a = 0; a < 16; ++a)
                for (int b = 0; b < 16; ++b) blocks[0](a, b) = along[s](a / 4, b / 4) * across[t](a % 4, b % 4);
            blocks[3] = blocks[5] = blocks[0];
            sink.add(patch_.nodes(s, t), blocks);
        }
    return band;
}

}  // namespace swale
