#pragma once

#include "solver/equilibrium/band_matrix.h"
#include "solver/equilibrium/element_tangent.h"
#include "solver/equilibrium/supports.h"

#include <vector>

namespace swale {

/// Adds tangents of control points to the band of the unknowns, T^T K T.
class BandSink final : public TangentSink {
  public:
    BandSink(const Supports& supports, BandMatrix& band) : supports_(supports), band_(band) {}

    void add(const SpanNodes& nodes, const ElementTangent& tangent) override;
    void add_block(const std::vector<int>& nodes, const Eigen::MatrixXd& tangent) override;

  private:
    /// Part of an unknown in a row of the tangent.
    struct Part {
        int unknown, row;
        double weight;
    };
    void add_runs(const std::array<int, 4>& first, const ElementTangent& tangent);
    template <class Nodes, class Tangent>
    void add_tied(const Nodes& nodes, const Tangent& tangent);

    const Supports& supports_;
    BandMatrix& band_;
    std::vector<Part> parts_;     // of the tangent at hand, kept for their memory
    std::vector<double> column_;  // likewise
};

}  // namespace swale
