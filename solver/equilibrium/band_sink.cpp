#include "solver/equilibrium/band_sink.h"

#include <algorithm>
#include <stdexcept>

namespace swale {

BandSink::BandSink(const Patch& patch, const Supports& supports, BandMatrix& band)
    : supports_(supports),
      across_(patch.across.size()),
      along_(patch.along.size()),
      band_(band),
      window_(rows * across_ * 3 * stencil),
      filled_(rows * across_) {}

void BandSink::add(const SpanNodes& nodes, const ElementTangent& tangent) {
    using FourPoints = Eigen::Array<double, 12, 1>;
    const int row = nodes[0] / across_, first = nodes[0] % across_;
    if (row != first_row_) move_to(row);
    for (int a = 0; a < 4; ++a)
        for (int b = 0; b < 4; ++b) {
            filled_[(row + a) % rows * across_ + first + b] = 1;
            for (int c = 0; c < 3; ++c) {
                // The span's first point stands b places before this one, whose own place in a run is the fourth. What lies
                // above the diagonal is added too and never read.
                double* column = stencil_of(row + a, first + b, c) + 3 * (3 - b);
                const double* values = tangent.col(12 * a + 3 * b + c).data();
                for (int below = 0; a + below < 4; ++below)
                    FourPoints::Map(column + run * below) += FourPoints::Map(values + 12 * (a + below));
            }
        }
}

void BandSink::add_block(const std::vector<int>& nodes, const Eigen::MatrixXd& tangent) {
    const int size = 3 * static_cast<int>(nodes.size());
    if (tangent.rows() != size || tangent.cols() != size)
        throw std::logic_error("a tangent block has another size than its control points");
    for (int column = 0; column < size; ++column)
        for (int row = column; row < size; ++row)
            add_entry({nodes[row / 3], row % 3}, {nodes[column / 3], column % 3}, tangent(row, column));
}

void BandSink::close() {
    for (int row = first_row_; row < first_row_ + rows; ++row) send(row);
    clear_through(band_.size() - 1);
}

void BandSink::clear_through(int column) {
    for (; cleared_ <= column; ++cleared_) band_.entries().col(cleared_).setZero();
}

void BandSink::move_to(int row) {
    const int left_behind = row < first_row_ ? rows : std::min(rows, row - first_row_);
    for (int k = 0; k < left_behind; ++k) send(first_row_ + k);
    first_row_ = row;
}

// The columns of a row of control points; they are zero afterwards.
void BandSink::send(int row) {
    for (int j = 0; j < across_; ++j) {
        char& filled = filled_[row % rows * across_ + j];
        if (!filled) continue;
        filled = 0;
        const int first = std::max(0, j - 3), last = std::min(across_ - 1, j + 3);
        for (int c = 0; c < 3; ++c) {
            const Freedom column{row * across_ + j, c};
            double* values = stencil_of(row, j, c);
            send_run(column, column.point, last - j + 1, values + 9);
            for (int below = 1; below < rows && row + below < along_; ++below)
                send_run(column, column.point + below * across_ + first - j, last - first + 1,
                         values + run * below + 3 * (first - j + 3));
            std::fill(values, values + stencil, 0.0);
        }
    }
}

// Neighbours in a row of control points. Plain unknowns go to the band at once, in one piece if they are numbered one after the
// other; where ties or another order of the numbers are met, every entry goes its own way.
void BandSink::send_run(Freedom column, int first_point, int points, const double* values) {
    const int begin = first_point == column.point ? column.component : 0;  // on the diagonal
    const int above = supports_.plain_unknown(column.point, column.component);
    if (above == Supports::fixed) return;
    if (above >= 0) clear_through(above);
    // Entry (r, c), r >= c, of the band stands at c * half_bandwidth + r.
    double* entries = band_.entries().data() + std::max<Eigen::Index>(above, 0) * band_.half_bandwidth();
    const int first = supports_.plain_unknown(first_point, 0);
    const bool behind = first_point == column.point || first > above;
    if (above >= 0 && behind && supports_.consecutive(first_point) >= 3 * points) {
        for (int r = begin; r < 3 * points; ++r) entries[first + r] += values[r];
        return;
    }
    for (int r = begin; r < 3 * points; ++r) {
        const int unknown = supports_.plain_unknown(first_point + r / 3, r % 3);
        if (above >= 0 && unknown > above)
            entries[unknown] += values[r];
        else if (unknown != Supports::fixed)
            add_entry({first_point + r / 3, r % 3}, column, values[r]);
    }
}

// An entry of K and its mirror image: two different components that depend on one unknown meet on its diagonal twice.
void BandSink::add_entry(Freedom row, Freedom column, double value) {
    if (value == 0) return;
    const bool same = row.point == column.point && row.component == column.component;
    for (const auto& r : supports_.shares(row.point, row.component))
        for (const auto& c : supports_.shares(column.point, column.component)) {
            if (same && r.unknown < c.unknown) continue;
            clear_through(std::min(r.unknown, c.unknown));
            const bool twice = !same && r.unknown == c.unknown;
            band_.add(r.unknown, c.unknown, (twice ? 2 : 1) * r.weight * c.weight * value);
        }
}

}  // namespace swale
