#include "solver/equilibrium/chain_stiffness.h"

#include <Eigen/Cholesky>

#include <stdexcept>

namespace swale {

namespace {

using Eigen::MatrixXd;

constexpr int doublings = 12;

// Energy 1/2 (u, v) [A B; B^T C] (u, v) of a chain whose left joint does u and whose right joint does v.
struct Chain {
    MatrixXd A, B, C;
};

// With e = (u + v)/2 and a = (u - v)/2 in mirrored coordinates the energy of a cell is e.Ks.e + a.Ka.a.
Chain one_cell(const HalfCell& half) {
    const MatrixXd same = (half.symmetric + half.antisymmetric) / 2, opposite = (half.symmetric - half.antisymmetric) / 2;
    return {half.turn.transpose() * same * half.turn, half.turn.transpose() * opposite, same};
}

Eigen::LLT<MatrixXd> factor(const MatrixXd& matrix) {
    Eigen::LLT<MatrixXd> llt(matrix);
    if (llt.info() != Eigen::Success) throw std::domain_error("the chain is not stable");
    return llt;
}

// Two equal chains in a row, the joint between them condensed.
Chain doubled(const Chain& chain) {
    const auto joint = factor(chain.C + chain.A);
    const MatrixXd from_left = joint.solve(chain.B.transpose()), from_right = joint.solve(chain.B);
    return {chain.A - chain.B * from_left, -chain.B * from_right, chain.C - chain.B.transpose() * from_right};
}

}  // namespace

MatrixXd endless_chain_stiffness(const HalfCell& half) {
    Chain chain = one_cell(half);
    for (int k = 0; k < doublings; ++k) chain = doubled(chain);
    const MatrixXd stiffness = chain.A - chain.B * factor(chain.C).solve(chain.B.transpose());
    return (stiffness + stiffness.transpose()) / 2;
}

}  // namespace swale
