#include "solver/shell/lane_relief.h"

#include "materials/membrane_law.h"

namespace swale {

namespace {

// n = A11 e11 + A12 e22 + A16 e12 with e as in `shell_point.h`; R by n, times the weight over A11.
struct Relieved {
    LaneVector by_a1, by_a2;  // of n: A11 a1 + A16 a2, A12 a2 + A16 a1
    CompressionRelief<Lanes> R;
};

Relieved relieved(const LaneJet& jet, const LaneLaw& law) {
    const LaneVector &a1 = jet.r[by_x], &a2 = jet.r[by_y];
    const Eigen::Vector3d a = law.section.membrane.col(0);
    const Lanes n = a[0] * (dot(a1, a1) - 1) / 2 + a[1] * (dot(a2, a2) - 1) / 2 + a[2] * dot(a1, a2);
    const CompressionRelief<Lanes> R = compression_relief(law.section.compression, n);
    const Lanes factor = law.weight / a[0];
    return {a[0] * a1 + a[2] * a2, a[1] * a2 + a[2] * a1, {factor * R.energy, factor * R.slope, factor * R.curvature}};
}

void add(const LaneMatrix& more, LaneMatrix& sum) {
    for (int i = 0; i < 3; ++i)
        for (int j = 0; j < 3; ++j) sum.m[i][j] += more.m[i][j];
}

}  // namespace

Lanes relief_energy(const LaneJet& jet, const LaneLaw& law) {
    return relieved(jet, law).R.energy;
}

void add_relief_gradient(const LaneJet& jet, const LaneLaw& law, LaneJet& gradient) {
    const Relieved n = relieved(jet, law);
    gradient.r[by_x] += n.R.slope * n.by_a1;
    gradient.r[by_y] += n.R.slope * n.by_a2;
}

// (R'' dn dn^T + R' d2n)/A11, d2n = A11 I for (a1, a1), A12 I for (a2, a2), A16 I for (a1, a2).
void add_relief_tangent(const LaneJet& jet, const LaneLaw& law, LaneTangent& tangent) {
    const Relieved n = relieved(jet, law);
    const Eigen::Vector3d a = law.section.membrane.col(0);
    const LaneVector f1 = n.R.curvature * n.by_a1, f2 = n.R.curvature * n.by_a2;
    add(sum_of_outer<1>({n.by_a1}, {f1}), tangent.block[by_x][by_x]);
    add(sum_of_outer<1>({n.by_a2}, {f2}), tangent.block[by_y][by_y]);
    add(sum_of_outer<1>({n.by_a1}, {f2}), tangent.block[by_x][by_y]);
    add_diagonal(a[0] * n.R.slope, tangent.block[by_x][by_x]);
    add_diagonal(a[1] * n.R.slope, tangent.block[by_y][by_y]);
    add_diagonal(a[2] * n.R.slope, tangent.block[by_x][by_y]);
}

}  // namespace swale
