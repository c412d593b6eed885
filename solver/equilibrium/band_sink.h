#pragma once

#include "solver/equilibrium/band_matrix.h"
#include "solver/equilibrium/element_tangent.h"
#include "solver/equilibrium/supports.h"

#include <vector>

namespace swale {

/// Adds tangents of control points to the band of the unknowns, T^T K T.
///
/// The tangents of spans are first summed where they couple control points: a window of four rows of them across the belt,
/// which stays in the processor's cache and moves along with the spans. A row that is left behind goes to the band, so that
/// ties are resolved once for a pair of control points and not for every span.
class BandSink final : public TangentSink {
  public:
    BandSink(const Patch& patch, const Supports& supports, BandMatrix& band);

    void add(const SpanNodes& nodes, const ElementTangent& tangent) override;
    void add_block(const std::vector<int>& nodes, const Eigen::MatrixXd& tangent) override;
    /// Sends what is left in the window to the band and clears the columns that nothing came to.
    void close();

  private:
    /// A column of K below its diagonal: four rows of seven neighbours, three components each.
    static constexpr int rows = 4, neighbours = 7, run = 3 * neighbours, stencil = rows * run;

    double* stencil_of(int row, int j, int component) {
        return window_.data() + stencil * (3 * (row % rows * across_ + j) + component);
    }
    void move_to(int row);
    void send(int row);
    void send_run(Freedom column, int first_point, int points, const double* values);
    void clear_through(int column);
    void add_entry(Freedom row, Freedom column, double value);

    const Supports& supports_;
    int across_, along_;  // control points
    BandMatrix& band_;
    std::vector<double> window_;
    std::vector<char> filled_;  // control points of the window with anything in their columns
    int first_row_ = 0, cleared_ = 0;
};

}  // namespace swale
