#include "solver/shell/span_tangent.h"

namespace swale {

namespace {

constexpr int row = SpanTangent::row;

// Derivatives of the surface in groups that are taken equally often along x, and how often each is taken across.
constexpr int begin_of[4] = {by_y, by_x, by_xx, 5};
constexpr int order_across[5] = {1, 2, 0, 1, 0};

// left[b c][c'] = sum over p in i of Y_p b H[p c, q c']
template <int i>
inline void contract_left(const LaneTangent& H, const LaneBasis& Y, int q, Lanes (&left)[row][3]) {
    for (int c = 0; c < 3; ++c)
        for (int d = 0; d < 3; ++d)
            for (int b = 0; b < 4; ++b) {
                Lanes sum{};
                for (int p = begin_of[i]; p < begin_of[i + 1]; ++p)
                    sum += Y.f[order_across[p]][b] * (p >= q ? H.block[p][q].m[c][d] : H.block[q][p].m[d][c]);
                left[3 * b + c][d] = sum;
            }
}

// Values come in pairs, so that a run over all terms of a pair of values is one stream: value e of term t is at
// [(e / 2) * terms + t][e % 2].
using ValuePair = Lanes[2];

// sum[f][e] = sum over t of factor[t][f] * value of e and t, in blocks that stay in registers.
template <int factors, int block, int values>
inline void multiply(const Lanes (*factor)[factors], const ValuePair* value, int terms, Lanes (*sum)[values]) {
    static_assert(factors % block == 0 && values % 2 == 0);
    for (int e = 0; e < values; e += 2, value += terms)
        for (int f = 0; f < factors; f += block) {
            Lanes part[block][2]{};
            for (int t = 0; t < terms; ++t)
                for (int g = 0; g < block; ++g) {
                    part[g][0] += factor[t][f + g] * value[t][0];
                    part[g][1] += factor[t][f + g] * value[t][1];
                }
            for (int g = 0; g < block; ++g) {
                sum[f + g][e] = part[g][0];
                sum[f + g][e + 1] = part[g][1];
            }
        }
}

// Four rows of a column, one span a lane, to the columns of the four spans.
inline void transpose(const Lanes* rows, double* const (&columns)[lanes]) {
    const Lanes low01 = __builtin_shufflevector(rows[0], rows[1], 0, 4, 2, 6);
    const Lanes high01 = __builtin_shufflevector(rows[0], rows[1], 1, 5, 3, 7);
    const Lanes low23 = __builtin_shufflevector(rows[2], rows[3], 0, 4, 2, 6);
    const Lanes high23 = __builtin_shufflevector(rows[2], rows[3], 1, 5, 3, 7);
    *reinterpret_cast<Lanes*>(columns[0]) = __builtin_shufflevector(low01, low23, 0, 1, 4, 5);
    *reinterpret_cast<Lanes*>(columns[1]) = __builtin_shufflevector(high01, high23, 0, 1, 4, 5);
    *reinterpret_cast<Lanes*>(columns[2]) = __builtin_shufflevector(low01, low23, 2, 3, 6, 7);
    *reinterpret_cast<Lanes*>(columns[3]) = __builtin_shufflevector(high01, high23, 2, 3, 6, 7);
}

}  // namespace

// The terms of one pair i >= j at the line k.
template <int i, int j>
void SpanTangent::add_pair(const SpanBatch& batch, int k, const LaneTangent* points) {
    // G = sum over l and q in j of left_q[b c, c'] Y_q b'
    constexpr int most = 2 * 8;
    Lanes left[most][row][3];
    const Lanes* Y[most];
    int terms = 0;
    for (int l = 0; l < batch.points_across(); ++l)
        for (int q = begin_of[j]; q < begin_of[j + 1]; ++q, ++terms) {
            Y[terms] = batch.across(l).f[order_across[q]];
            contract_left<i>(points[l], batch.across(l), q, left[terms]);
        }
    Lanes G[row][row];
    for (int r = 0; r < row; ++r) {
        Lanes sum[4][3]{};
        for (int t = 0; t < terms; ++t)
            for (int b = 0; b < 4; ++b)
                for (int c = 0; c < 3; ++c) sum[b][c] += Y[t][b] * left[t][r][c];
        for (int b = 0; b < 4; ++b)
            for (int c = 0; c < 3; ++c) G[r][3 * b + c] = sum[b][c];
    }

    const auto& X = batch.along(k).f;
    Lanes* even = symmetric_factor_[symmetric_count_];
    for (int a = 0; a < 4; ++a)
        for (int b = 0; b <= a; ++b) *even++ = i == j ? X[i][a] * X[i][b] : (X[i][a] * X[j][b] + X[j][a] * X[i][b]) / 2;
    const int all = 6 * batch.points_along();
    for (int r = 0, e = 0; r < row; ++r)
        for (int c = 0; c <= r; ++c, ++e)
            symmetric_[e / 2 * all + symmetric_count_][e % 2] = i == j ? G[r][c] : G[r][c] + G[c][r];
    ++symmetric_count_;
    if (i == j) return;
    Lanes* odd = skew_factor_[skew_count_];
    for (int a = 1; a < 4; ++a)
        for (int b = 0; b < a; ++b) *odd++ = (X[i][a] * X[j][b] - X[j][a] * X[i][b]) / 2;
    for (int r = 1, e = 0; r < row; ++r)
        for (int c = 0; c < r; ++c, ++e) skew_[e / 2 * (all / 2) + skew_count_][e % 2] = G[r][c] - G[c][r];
    ++skew_count_;
}

void SpanTangent::add_line(const SpanBatch& batch, int k, const LaneTangent* points) {
    add_pair<0, 0>(batch, k, points);
    add_pair<1, 0>(batch, k, points);
    add_pair<1, 1>(batch, k, points);
    add_pair<2, 0>(batch, k, points);
    add_pair<2, 1>(batch, k, points);
    add_pair<2, 2>(batch, k, points);
}

void SpanTangent::finish(std::array<ElementTangent, lanes>& tangents) {
    multiply<symmetric_products, 5>(symmetric_factor_, symmetric_, symmetric_count_, symmetric_sum_);
    multiply<skew_products, 6>(skew_factor_, skew_, skew_count_, skew_sum_);
    symmetric_count_ = skew_count_ = 0;
    for (int a = 0, pair = 0; a < 4; ++a)
        for (int b = 0; b <= a; ++b, ++pair) {
            Lanes K[row][row];  // column by column
            for (int r = 0, s = 0; r < row; ++r)
                for (int c = 0; c <= r; ++c, ++s) {
                    const Lanes odd = a == b || r == c ? Lanes{} : skew_sum_[pair - a][s - r];
                    K[c][r] = symmetric_sum_[pair][s] + odd;
                    K[r][c] = symmetric_sum_[pair][s] - odd;
                }
            for (int c = 0; c < row; ++c)
                for (int r = 0; r < row; r += 4) {
                    double* columns[lanes];
                    for (int lane = 0; lane < lanes; ++lane)
                        columns[lane] = tangents[lane].data() + 48 * (row * b + c) + row * a + r;
                    transpose(&K[c][r], columns);
                }
        }
}

}  // namespace swale
