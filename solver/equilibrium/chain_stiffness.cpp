#include "solver/equilibrium/chain_stiffness.h"

#include <Eigen/Cholesky>

#include <utility>

namespace swale {

namespace {

using Eigen::MatrixXd;

// 64 cells: disturbances of a trough fade over a dozen.
constexpr int doublings = 6;

// Energy 1/2 (u, v) [A B; B^T C] (u, v) of a chain whose left joint does u and whose right joint does v.
struct Chain {
    MatrixXd A, B, C;
};

// With e = (u + v)/2 and a = (u - v)/2 in mirrored coordinates the energy of a cell is e.Ks.e + a.Ka.a.
Chain one_cell(const HalfCell& half) {
    const MatrixXd same = (half.symmetric + half.antisymmetric) / 2, opposite = (half.symmetric - half.antisymmetric) / 2;
    return {half.turn.transpose() * same * half.turn, half.turn.transpose() * opposite, same};
}

using Factor = Eigen::LLT<MatrixXd>;

bool stable(const Factor& factor) {
    return factor.info() == Eigen::Success;
}

// Two equal chains in a row, the joint between them condensed; empty if that is not stable.
std::optional<Chain> doubled(const Chain& chain) {
    const Factor joint(chain.C + chain.A);
    if (!stable(joint)) return {};
    const MatrixXd from_left = joint.solve(chain.B.transpose()), from_right = joint.solve(chain.B);
    return Chain{chain.A - chain.B * from_left, -chain.B * from_right, chain.C - chain.B.transpose() * from_right};
}

// With its far end free; where that end alone would give way, as a soft trough's section cut through may, with it held.
MatrixXd seen_from_left(const Chain& chain) {
    const Factor far_end(chain.C);
    const MatrixXd stiffness = stable(far_end) ? MatrixXd(chain.A - chain.B * far_end.solve(chain.B.transpose())) : chain.A;
    return (stiffness + stiffness.transpose()) / 2;
}

}  // namespace

std::optional<MatrixXd> endless_chain_stiffness(const HalfCell& half) {
    Chain chain = one_cell(half);
    for (int k = 0; k < doublings; ++k) {
        std::optional<Chain> longer = doubled(chain);
        if (!longer) return {};
        chain = std::move(*longer);
    }
    return seen_from_left(chain);
}

}  // namespace swale
