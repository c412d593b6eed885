#include "solver/shell/span_batch.h"

#include <algorithm>

namespace swale {

namespace {

void fill_lane(const LinePoint& point, int lane, LaneBasis& basis) {
    for (int a = 0; a < 4; ++a) {
        basis.f[0][a][lane] = point.basis.value[a];
        basis.f[1][a][lane] = point.basis.slope[a];
        basis.f[2][a][lane] = point.basis.curvature[a];
    }
    basis.weight[lane] = point.weight;
    basis.position[lane] = point.position;
}

// Derivatives by x and by y of each entry of the jet.
constexpr int order_along[5] = {0, 0, 1, 1, 2}, order_across[5] = {1, 2, 0, 1, 0};

}  // namespace

SpanBatch::SpanBatch(const Patch& patch, const LineRule& along, const LineRule& across, int first, const ControlPoints& points)
    : points_along_(along.per_span), points_across_(across.per_span) {
    const int spans_across = patch.across.spans(), spans = patch.along.spans() * spans_across;
    filled_ = std::min(lanes, spans - first);
    for (int lane = 0; lane < lanes; ++lane) {
        const int span = std::min(first + lane, spans - 1), s = span / spans_across, t = span % spans_across;
        nodes_[lane] = patch.nodes(s, t);
        for (int a = 0; a < 16; ++a) {
            control_[a].x[lane] = points(0, nodes_[lane][a]);
            control_[a].y[lane] = points(1, nodes_[lane][a]);
            control_[a].z[lane] = points(2, nodes_[lane][a]);
        }
        for (int k = 0; k < points_along_; ++k) fill_lane(along.points[s * points_along_ + k], lane, along_[k]);
        for (int l = 0; l < points_across_; ++l) fill_lane(across.points[t * points_across_ + l], lane, across_[l]);
        for (int k = 0; lane >= filled_ && k < points_along_; ++k) along_[k].weight[lane] = 0;
    }
}

void SpanBatch::contract_along(const LaneBasis& basis, LaneVector (&rows)[3][4]) const {
    for (int order = 0; order < 3; ++order)
        for (int b = 0; b < 4; ++b) {
            LaneVector sum = basis.f[order][0] * control_[b];
            for (int a = 1; a < 4; ++a) sum += basis.f[order][a] * control_[4 * a + b];
            rows[order][b] = sum;
        }
}

LaneJet SpanBatch::jet_of(const LaneVector (&rows)[3][4], const LaneBasis& basis) {
    LaneJet jet;
    for (int p = 0; p < 5; ++p) {
        LaneVector sum = basis.f[order_across[p]][0] * rows[order_along[p]][0];
        for (int b = 1; b < 4; ++b) sum += basis.f[order_across[p]][b] * rows[order_along[p]][b];
        jet.r[p] = sum;
    }
    return jet;
}

void SpanBatch::add_gradient(int k, int l, const LaneJet& g, LaneVector (&sum)[16]) const {
    const auto &X = along_[k].f, &Y = across_[l].f;
    for (int b = 0; b < 4; ++b) {
        const LaneVector none = Y[1][b] * g.r[by_y] + Y[2][b] * g.r[by_yy];
        const LaneVector once = Y[0][b] * g.r[by_x] + Y[1][b] * g.r[by_xy];
        const LaneVector twice = Y[0][b] * g.r[by_xx];
        for (int a = 0; a < 4; ++a) sum[4 * a + b] += X[0][a] * none + X[1][a] * once + X[2][a] * twice;
    }
}

}  // namespace swale
