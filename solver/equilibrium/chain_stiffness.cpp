#include "solver/equilibrium/chain_stiffness.h"

#include <Eigen/Cholesky>

namespace swale {

namespace {

using Eigen::MatrixXd;

// 64 cells: disturbances of a trough fade over a dozen. Much longer chains would let the small negative stiffness that a
// coarse grid may have against moving along itself add up to instability.
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

}  // namespace

std::optional<MatrixXd> endless_chain_stiffness(const HalfCell& half) {
    Chain chain = one_cell(half);
    Factor far_end(chain.C);
    if (!stable(far_end)) return {};
    for (int k = 0; k < doublings; ++k) {
        const std::optional<Chain> longer = doubled(chain);
        if (!longer) break;
        const Factor longer_end(longer->C);
        if (!stable(longer_end)) break;
        chain = *longer;
        far_end = longer_end;
    }
    const MatrixXd stiffness = chain.A - chain.B * far_end.solve(chain.B.transpose());
    return MatrixXd((stiffness + stiffness.transpose()) / 2);
}

}  // namespace swale
