#include "solver/equilibrium/band_sink.h"

#include <algorithm>
#include <stdexcept>
#include <tuple>

namespace swale {

namespace {

constexpr int run = 12;  // unknowns of the four control points of a span that are neighbours across

// First unknown of each of a span's four runs, and whether they are runs that follow each other along the belt.
bool find_runs(const Supports& supports, const SpanNodes& nodes, std::array<int, 4>& first) {
    for (int a = 0; a < 4; ++a) {
        first[a] = supports.plain_unknown(nodes[4 * a], 0);
        if (supports.consecutive(nodes[4 * a]) < run || (a > 0 && first[a] < first[a - 1] + run)) return false;
    }
    return true;
}

}  // namespace

void BandSink::add(const SpanNodes& nodes, const ElementTangent& tangent) {
    std::array<int, 4> first;
    find_runs(supports_, nodes, first) ? add_runs(first, tangent) : add_tied(nodes, tangent);
}

void BandSink::add_block(const std::vector<int>& nodes, const Eigen::MatrixXd& tangent) {
    const auto size = static_cast<Eigen::Index>(3 * nodes.size());
    if (tangent.rows() != size || tangent.cols() != size)
        throw std::logic_error("a tangent block has another size than its control points");
    add_tied(nodes, tangent);
}

// A column of the band takes pieces of up to twelve rows in a row.
void BandSink::add_runs(const std::array<int, 4>& first, const ElementTangent& tangent) {
    const Eigen::Index step = band_.half_bandwidth();
    for (int b = 0; b < 4; ++b)
        for (int c = 0; c < run; ++c) {
            // Entry (r, c), r >= c, of the band stands at c * half_bandwidth + r.
            double* rows = band_.entries().data() + (first[b] + c) * step;
            const double* column = &tangent.coeffRef(0, run * b + c);
            for (int r = c; r < run; ++r) rows[first[b] + r] += column[run * b + r];
            for (int a = b + 1; a < 4; ++a)
                for (int r = 0; r < run; ++r) rows[first[a] + r] += column[run * a + r];
        }
}

// K(u, v) = sum of w_r w_c tangent(r, c) over all rows r with a part of u and all columns c with one of v.
template <class Nodes, class Tangent>
void BandSink::add_tied(const Nodes& nodes, const Tangent& tangent) {
    parts_.clear();
    for (int row = 0; row < tangent.rows(); ++row)
        for (const Supports::Share& share : supports_.shares(nodes[row / 3], row % 3))
            parts_.push_back({share.unknown, row, share.weight});
    std::sort(parts_.begin(), parts_.end(),
              [](const Part& p, const Part& q) { return std::tie(p.unknown, p.row) < std::tie(q.unknown, q.row); });
    column_.resize(tangent.rows());
    for (std::size_t q = 0; q < parts_.size(); ++q) {
        const auto [unknown, c, weight] = parts_[q];
        // Only the lower triangle is filled.
        for (int r = 0; r < c; ++r) column_[r] = weight * tangent(c, r);
        for (int r = c; r < tangent.rows(); ++r) column_[r] = weight * tangent(r, c);
        double* rows = band_.entries().data() + static_cast<Eigen::Index>(unknown) * band_.half_bandwidth();
        rows[unknown] += weight * column_[c];
        std::size_t p = q + 1;
        // Two parts of one unknown meet twice on the diagonal.
        for (; p < parts_.size() && parts_[p].unknown == unknown; ++p)
            rows[unknown] += 2 * parts_[p].weight * column_[parts_[p].row];
        for (; p < parts_.size(); ++p) rows[parts_[p].unknown] += parts_[p].weight * column_[parts_[p].row];
    }
}

}  // namespace swale
