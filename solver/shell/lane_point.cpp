#include "solver/shell/lane_point.h"

#include "solver/shell/lane_relief.h"

namespace swale {

namespace {

// Strains, forces and the normal; weights of the quadrature are in N and M.
struct State {
    LaneVector n, e, k, N, M;
    Lanes over_J;
};

// law * v for a 3 x 3 section law.
LaneVector product(const Eigen::Matrix3d& law, const LaneVector& v) {
    return {law(0, 0) * v.x + law(0, 1) * v.y + law(0, 2) * v.z, law(1, 0) * v.x + law(1, 1) * v.y + law(1, 2) * v.z,
            law(2, 0) * v.x + law(2, 1) * v.y + law(2, 2) * v.z};
}

State state_at(const LaneJet& jet, const LaneLaw& law) {
    const LaneVector &a1 = jet.r[by_x], &a2 = jet.r[by_y];
    State state;
    // n = a1 x a2 / J
    const LaneVector m = cross(a1, a2);
    state.over_J = 1 / square_root(dot(m, m));
    state.n = state.over_J * m;
    state.e = {(dot(a1, a1) - 1) / 2, (dot(a2, a2) - 1) / 2, dot(a1, a2)};
    state.k = LaneVector{dot(jet.r[by_xx], state.n), dot(jet.r[by_yy], state.n), 2 * dot(jet.r[by_xy], state.n)} -
              law.natural_curvature;
    state.N = law.weight * product(law.section.membrane, state.e);
    state.M = law.weight * product(law.section.bending, state.k);
    return state;
}

// c - (c . n) n
LaneVector tangential(const LaneVector& c, const LaneVector& n) {
    return c - dot(c, n) * n;
}

// M11 a11 + M22 a22 + 2 M12 a12
LaneVector weighted_curvature(const LaneJet& jet, const LaneVector& M) {
    return M.x * jet.r[by_xx] + M.y * jet.r[by_yy] + (2 * M.z) * jet.r[by_xy];
}

// The three second derivatives with their factor in k and their place in the jet.
constexpr double factor[3] = {1, 1, 2};
constexpr int place[3] = {by_xx, by_yy, by_xy};

// Derivatives of k by a1 and a2: (a2 x t)/J and (t x a1)/J with t = factor (c - (c . n) n).
struct CurvatureGradient {
    LaneVector by_a1[3], by_a2[3];
};

CurvatureGradient curvature_gradient(const LaneJet& jet, const State& state) {
    CurvatureGradient g;
    for (int m = 0; m < 3; ++m) {
        const LaneVector t = (factor[m] * state.over_J) * tangential(jet.r[place[m]], state.n);
        g.by_a1[m] = cross(jet.r[by_y], t);
        g.by_a2[m] = cross(t, jet.r[by_x]);
    }
    return g;
}

// Blocks with a second derivative c in them: dk = factor n . dc, so D_mk times factor n and the derivatives of k_k; and
//   d2(M . k)/dc da = M factor (I - n n^T)/J S,  S1 da1 = da1 x a2,  S2 da2 = a1 x da2.
void second_derivatives(const LaneJet& jet, const LaneLaw& law, const State& state, const CurvatureGradient& g,
                        LaneTangent& H) {
    const LaneVector &n = state.n, &a1 = jet.r[by_x], &a2 = jet.r[by_y];
    const LaneVector S1_n = cross(a2, n), S2_n = cross(n, a1);
    const LaneMatrix nn = sum_of_outer<1>({n}, {n});
    for (int m = 0; m < 3; ++m) {
        const Lanes moment = factor[m] * state.over_J * state.M.at(m);
        LaneVector f1 = -moment * S1_n, f2 = -moment * S2_n;
        for (int k = 0; k < 3; ++k) {
            const Lanes D = factor[m] * law.section.bending(m, k) * law.weight;
            f1 += D * g.by_a1[k];
            f2 += D * g.by_a2[k];
            if (place[m] >= place[k]) H.block[place[m]][place[k]] = factor[k] * D * nn;
        }
        LaneMatrix c_a1 = sum_of_outer<1>({n}, {f1}), c_a2 = sum_of_outer<1>({n}, {f2});
        add_skew(-moment * a2, c_a1);
        add_skew(moment * a1, c_a2);
        H.block[place[m]][by_y] = c_a2;
        // r,yy stands before r,x in the order, the other two behind it.
        place[m] > by_x ? H.block[place[m]][by_x] = c_a1 : H.block[by_x][place[m]] = transposed(c_a1);
    }
}

// Blocks of a1 and a2. Membrane: de11 = a1 . da1, de22 = a2 . da2, de12 = a2 . da1 + a1 . da2 with A between them, and N I.
// Bending: D between the derivatives of k; and with cbar = M11 a11 + M22 a22 + 2 M12 a12, g = cbar . n, r = S^T cbar, s = S^T n
//   -[r s^T + s r^T + g (S^T S - 3 s s^T)]/J^2,  to which r,x with r,y adds -skew(cbar - g n)/J,
//   S1^T S1 = a2 . a2 I - a2 a2^T,  S1^T S2 = a1 a2^T - a1 . a2 I,  S2^T S2 = a1 . a1 I - a1 a1^T.
void first_derivatives(const LaneJet& jet, const LaneLaw& law, const State& state, const CurvatureGradient& g, LaneTangent& H) {
    const LaneVector &n = state.n, &a1 = jet.r[by_x], &a2 = jet.r[by_y];
    const auto A = [&](int i, int j) { return law.section.membrane(i, j) * law.weight; };
    const auto D_times = [&](const LaneVector(&k)[3], int m) {
        const Eigen::Matrix3d& D = law.section.bending;
        return law.weight * (D(m, 0) * k[0] + D(m, 1) * k[1] + D(m, 2) * k[2]);
    };
    const LaneVector cbar = weighted_curvature(jet, state.M);
    const Lanes over_J2 = state.over_J * state.over_J, turn = over_J2 * dot(cbar, n);
    const LaneVector s1 = cross(a2, n), s2 = cross(n, a1);
    // -(r s^T + s r^T)/J^2 + 3 g/J^2 s s^T = q s^T + s q^T with q = -r/J^2 + 3/2 g/J^2 s.
    const LaneVector q1 = 1.5 * turn * s1 - over_J2 * cross(a2, cbar), q2 = 1.5 * turn * s2 - over_J2 * cross(cbar, a1);
    const LaneVector f1[3] = {D_times(g.by_a1, 0), D_times(g.by_a1, 1), D_times(g.by_a1, 2)};
    const LaneVector f2[3] = {D_times(g.by_a2, 0), D_times(g.by_a2, 1), D_times(g.by_a2, 2)};

    LaneMatrix& xx = H.block[by_x][by_x];
    xx = sum_of_outer<7>({a1, a2, g.by_a1[0], g.by_a1[1], g.by_a1[2], q1, s1},
                         {A(0, 0) * a1 + A(0, 2) * a2, A(2, 0) * a1 + (A(2, 2) + turn) * a2, f1[0], f1[1], f1[2], s1, q1});
    add_diagonal(state.N.x - turn * dot(a2, a2), xx);

    LaneMatrix& yy = H.block[by_y][by_y];
    yy = sum_of_outer<7>({a1, a2, g.by_a2[0], g.by_a2[1], g.by_a2[2], q2, s2},
                         {(A(2, 2) + turn) * a1 + A(2, 1) * a2, A(1, 2) * a1 + A(1, 1) * a2, f2[0], f2[1], f2[2], s2, q2});
    add_diagonal(state.N.y - turn * dot(a1, a1), yy);

    LaneMatrix& xy = H.block[by_x][by_y];
    xy = sum_of_outer<7>({a1, a2, g.by_a1[0], g.by_a1[1], g.by_a1[2], q1, s1},
                         {A(0, 2) * a1 + (A(0, 1) - turn) * a2, A(2, 2) * a1 + A(2, 1) * a2, f2[0], f2[1], f2[2], s2, q2});
    add_diagonal(state.N.z + turn * dot(a1, a2), xy);
    add_skew(-state.over_J * tangential(cbar, n), xy);
}

}  // namespace

Lanes lane_energy(const LaneJet& jet, const LaneLaw& law) {
    const State state = state_at(jet, law);
    const Lanes linear = (dot(state.e, state.N) + dot(state.k, state.M)) / 2;
    return law.section.compression.linear() ? linear : linear + relief_energy(jet, law);
}

void lane_gradient(const LaneJet& jet, const LaneLaw& law, LaneJet& gradient) {
    const State state = state_at(jet, law);
    const LaneVector &n = state.n, &a1 = jet.r[by_x], &a2 = jet.r[by_y], &N = state.N;
    const LaneVector t = state.over_J * tangential(weighted_curvature(jet, state.M), n);
    gradient.r[by_x] = N.x * a1 + N.z * a2 + cross(a2, t);
    gradient.r[by_y] = N.y * a2 + N.z * a1 + cross(t, a1);
    gradient.r[by_xx] = state.M.x * n;
    gradient.r[by_yy] = state.M.y * n;
    gradient.r[by_xy] = (2 * state.M.z) * n;
    if (!law.section.compression.linear()) add_relief_gradient(jet, law, gradient);
}

void lane_tangent(const LaneJet& jet, const LaneLaw& law, LaneTangent& tangent) {
    const State state = state_at(jet, law);
    const CurvatureGradient g = curvature_gradient(jet, state);
    second_derivatives(jet, law, state, g, tangent);
    first_derivatives(jet, law, state, g, tangent);
    if (!law.section.compression.linear()) add_relief_tangent(jet, law, tangent);
}

}  // namespace swale
