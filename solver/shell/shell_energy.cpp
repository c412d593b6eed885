#include "solver/shell/shell_energy.h"

#include "solver/shell/span_tangent.h"

#include <utility>

namespace swale {

ShellEnergy::ShellEnergy(const Patch& patch, const Section& section, NaturalCurvature natural_curvature, int points_per_span)
    : patch_(patch),
      section_(section),
      natural_curvature_(std::move(natural_curvature)),
      along_(gauss_rule(patch.along, points_per_span)),
      across_(gauss_rule(patch.across, points_per_span)) {}

// Four spans at a time.
template <class Visit>
void ShellEnergy::for_each_batch(const ControlPoints& points, const Visit& visit) const {
    const int spans = patch_.along.spans() * patch_.across.spans();
    for (int first = 0; first < spans; first += lanes) visit(SpanBatch(patch_, along_, across_, first, points));
}

LaneLaw ShellEnergy::law_at(const LaneBasis& along, const LaneBasis& across) const {
    LaneLaw law{section_, along.weight * across.weight, {}};
    for (int lane = 0; natural_curvature_ && lane < lanes; ++lane) {
        const Eigen::Vector3d k0 = natural_curvature_(along.position[lane], across.position[lane]);
        law.natural_curvature.x[lane] = k0[0];
        law.natural_curvature.y[lane] = k0[1];
        law.natural_curvature.z[lane] = k0[2];
    }
    return law;
}

double ShellEnergy::energy(const ControlPoints& points) const {
    Lanes sum{};
    for_each_batch(points, [&](const SpanBatch& batch) {
        batch.for_each_jet(
            [&](int k, int l, const LaneJet& jet) { sum += lane_energy(jet, law_at(batch.along(k), batch.across(l))); });
    });
    return (sum[0] + sum[1]) + (sum[2] + sum[3]);
}

void ShellEnergy::add_gradient(const ControlPoints& points, ControlPoints& gradient) const {
    for_each_batch(points, [&](const SpanBatch& batch) {
        LaneVector sum[16];
        batch.for_each_jet([&](int k, int l, const LaneJet& jet) {
            LaneJet of_point;
            lane_gradient(jet, law_at(batch.along(k), batch.across(l)), of_point);
            batch.add_gradient(k, l, of_point, sum);
        });
        for (int lane = 0; lane < batch.filled(); ++lane)
            for (int a = 0; a < 16; ++a)
                gradient.col(batch.nodes(lane)[a]) += Eigen::Vector3d(sum[a].x[lane], sum[a].y[lane], sum[a].z[lane]);
    });
}

void ShellEnergy::add_tangent(const ControlPoints& points, TangentSink& sink) const {
    std::array<ElementTangent, lanes> tangents;
    std::vector<LaneTangent> line(across_.per_span);
    SpanTangent sum;
    for_each_batch(points, [&](const SpanBatch& batch) {
        batch.for_each_jet([&](int k, int l, const LaneJet& jet) {
            lane_tangent(jet, law_at(batch.along(k), batch.across(l)), line[l]);
            if (l == across_.per_span - 1) sum.add_line(batch, k, line.data());
        });
        sum.finish(tangents);
        for (int lane = 0; lane < batch.filled(); ++lane) sink.add(batch.nodes(lane), tangents[lane]);
    });
}

}  // namespace swale
