#pragma once

#include "solver/equilibrium/element_tangent.h"
#include "solver/shell/span_batch.h"

#include <array>

namespace swale {

/// Tangents of four spans from the law's tangents at their points, sum by sum:
///
///   K[a b c, a' b' c'] = sum over k, i, j of  X_i a(k) X_j a'(k) G_ij[b c, b' c'](k)
///   G_ij[b c, b' c'](k) = sum over l, p in i, q in j of  Y_p b(l) Y_q b'(l) H[p c, q c'](k, l)
///
/// a, b count splines along and across, c components, k, l points along and across; p, q are derivatives of the surface, i, j
/// how often they are taken along x; X_i and Y_p the splines' derivatives. Of K, G and H one half is enough: with
/// G_ji = G_ij^T the parts of G_ij that are symmetric and skew in (b c, b' c') enter K on their own,
///
///   K[a, a'] = sum of (X_i a X_j a' + X_j a X_i a')/2 (G_ij + G_ij^T) + (X_i a X_j a' - X_j a X_i a')/2 (G_ij - G_ij^T)
///
/// over i > j, and of X_i a X_i a' G_ii. A quarter of the work of B^T H B, which tests hold it against.
class SpanTangent {
  public:
    /// Takes the points k of the batch one after the other; `points` are the tangents, weight included, at its points l.
    void add_line(const SpanBatch& batch, int k, const LaneTangent* points);
    /// Lower triangles for the four spans; what is added next belongs to another batch.
    void finish(std::array<ElementTangent, lanes>& tangents);

    static constexpr int row = 12;                                     ///< b c
    static constexpr int symmetric_pairs = 78, skew_pairs = 66;        ///< of b c and b' c'
    static constexpr int symmetric_products = 10, skew_products = 6;   ///< of a and a'
    static constexpr int symmetric_terms = 6 * 8, skew_terms = 3 * 8;  ///< of i, j and k

  private:
    template <int i, int j>
    void add_pair(const SpanBatch& batch, int k, const LaneTangent* points);

    int symmetric_count_ = 0, skew_count_ = 0;
    Lanes symmetric_[symmetric_terms * symmetric_pairs / 2][2], symmetric_factor_[symmetric_terms][symmetric_products];
    Lanes skew_[skew_terms * skew_pairs / 2][2], skew_factor_[skew_terms][skew_products];
    Lanes symmetric_sum_[symmetric_products][symmetric_pairs], skew_sum_[skew_products][skew_pairs];
};

}  // namespace swale
