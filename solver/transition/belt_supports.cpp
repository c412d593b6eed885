#include "solver/transition/belt_supports.h"

#include "mesh/belt_grid.h"
#include "mesh/idler_set.h"

#include <Eigen/LU>

#include <algorithm>
#include <array>

namespace swale {

namespace {

enum { x = 0, y = 1, z = 2 };

// Lays down the conditions, one named step each. Later steps override earlier ones at the same component.
class Layer {
  public:
    Layer(const Patch& patch, const SupportRequest& request)
        : patch_(patch),
          request_(request),
          supports_(patch.points()),
          across_(patch.across.size()),
          last_(patch.along.size() - 1) {}

    // The mirror image at y = 0.
    void symmetry_line() {
        const bool symmetric = request_.parity == Parity::symmetric;
        for (int i = 0; i <= last_; ++i)
            for (const int component : {x, y, z})
                mirror({point(i, 0), point(i, 1), point(i, 2)}, component, symmetric == (component != y), patch_.across);
    }

    // The mirror image at the plane of a set, x = 0.
    void set_plane(SetPlane plane) {
        const bool symmetric = plane == SetPlane::symmetric;
        for (int j = 0; j < across_; ++j)
            for (const int component : {x, y, z})
                mirror({point(0, j), point(1, j), point(2, j)}, component, symmetric == (component != x), patch_.along);
    }

    // Stuck or sliding: a section with its slope fixed, at the top of the pulley or at the end of the wrap below it; plane
    // unless another is asked for. Held: the same position with the slope free.
    void pulley_line(const Pulley& pulley) {
        const bool wrapped = patch_.along.begin() < 0;
        const double height = pulley.lift - (wrapped ? pulley.diameter + 2 * request_.underside : 0);
        const Eigen::Matrix2Xd section = request_.section.value_or(plane_section(patch_));
        for (int j = 0; j < across_; ++j) {
            if (!request_.free_section)
                for (const int component : {x, y}) supports_.fix({point(0, j), component}, section(component, j));
            supports_.fix({point(0, j), z}, height);
            if (pulley.support == Support::rolls) supports_.fix({point(1, j), z}, height);
        }
    }

    // Held profile at the material section x of an inner break: w0 c0 + w1 c1 + w2 c2 = profile, solved for the middle row.
    void held_station(const TransitionLayout& layout, const IdlerSet& set) {
        const BasisValues at_set = patch_.along.at(set.path * request_.scale);
        const auto profile = profile_at(layout, request_.underside, set.angle, set.lift);
        const Eigen::Matrix2Xd target = interpolate_profile(patch_.across, profile);
        const double w0 = at_set.value[0], w1 = at_set.value[1], w2 = at_set.value[2];
        for (int j = 0; j < across_; ++j)
            for (const int component : {y, z})
                supports_.tie(
                    {point(at_set.first + 1, j), component},
                    {{{point(at_set.first, j), component}, -w0 / w1}, {{point(at_set.first + 2, j), component}, -w2 / w1}},
                    target(component - 1, j) / w1);
    }

    void held_trough(const TransitionLayout& layout) {
        const Eigen::Matrix2Xd target = interpolate_profile(patch_.across, held_profile(layout, request_.underside));
        for (int j = 0; j < across_; ++j)
            for (const int component : {y, z}) supports_.fix({point(last_, j), component}, target(component - 1, j));
        far_plane();
    }

    // A symmetry plane between two sets: the surface meets it squarely.
    void mid_span() {
        for (int j = 0; j < across_; ++j)
            for (const int component : {y, z})
                supports_.tie({point(last_ - 1, j), component}, {{{point(last_, j), component}, 1}});
        far_plane();
    }

    Supports close() {
        supports_.close();
        return std::move(supports_);
    }

  private:
    // Even components have zero slope at the line; odd ones are zero there with zero curvature, so that the mirror image is C2.
    void mirror(const std::array<int, 3>& points, int component, bool even, const CubicBasis& basis) {
        if (even) {
            supports_.tie({points[1], component}, {{{points[0], component}, 1}});
        } else {
            const BasisValues at_line = basis.at(basis.begin());
            supports_.fix({points[0], component}, 0);
            supports_.tie({points[1], component}, {{{points[2], component}, -at_line.curvature[2] / at_line.curvature[1]}});
        }
    }

    // One displacement along x for the whole section; an antisymmetric mode has none.
    void far_plane() {
        const bool moves = request_.parity == Parity::symmetric && !request_.elongation;
        const double place = patch_.along.end() + request_.elongation.value_or(0);
        for (int j = 0; j < across_; ++j) {
            if (!moves)
                supports_.fix({point(last_, j), x}, place);
            else if (j > 0)
                supports_.tie({point(last_, j), x}, {{{point(last_, 0), x}, 1}});
        }
    }

    int point(int i, int j) const { return patch_.index(i, j); }

    const Patch& patch_;
    const SupportRequest& request_;
    Supports supports_;
    int across_, last_;
};

}  // namespace

Eigen::Matrix2Xd interpolate_profile(const CubicBasis& across, const TroughProfile& profile) {
    const int n = across.size();
    const bool half = across.begin() == 0;
    const std::vector<double> places = across.greville();
    Eigen::MatrixXd matrix[2] = {Eigen::MatrixXd::Zero(n, n), Eigen::MatrixXd::Zero(n, n)};
    Eigen::MatrixXd right(n, 2);
    for (int r = 0; r < n; ++r) {
        // The second Greville point of a half belt gives way to symmetry: y'' = 0 and z' = 0 at the centre line.
        const bool symmetry = half && r == 1;
        const BasisValues basis = across.at(symmetry ? 0 : places[r]);
        for (int a = 0; a < 4; ++a) {
            matrix[0](r, basis.first + a) = symmetry ? basis.curvature[a] : basis.value[a];
            matrix[1](r, basis.first + a) = symmetry ? basis.slope[a] : basis.value[a];
        }
        right.row(r) = symmetry ? Eigen::RowVector2d::Zero() : Eigen::RowVector2d(profile.at(places[r]).transpose());
    }
    Eigen::Matrix2Xd control(2, n);
    for (int c = 0; c < 2; ++c) control.row(c) = matrix[c].partialPivLu().solve(right.col(c)).transpose();
    return control;
}

double profile_deviation(const CubicBasis& across, const TroughProfile& profile) {
    const Eigen::Matrix2Xd control = interpolate_profile(across, profile);
    double deviation = 0;
    for (int k = 0; k <= 40 * across.spans(); ++k) {
        const double s = across.begin() + (across.end() - across.begin()) * k / (40.0 * across.spans());
        const BasisValues basis = across.at(s);
        Eigen::Vector2d place = Eigen::Vector2d::Zero();
        for (int a = 0; a < 4; ++a) place += basis.value[a] * control.col(basis.first + a);
        deviation = std::max(deviation, (place - profile.at(s)).norm());
    }
    return deviation;
}

Eigen::Matrix2Xd plane_section(const Patch& patch) {
    const std::vector<double> places = patch.across.greville();
    Eigen::Matrix2Xd section = Eigen::Matrix2Xd::Zero(2, patch.across.size());
    for (int j = 0; j < patch.across.size(); ++j) section(y, j) = places[j];
    return section;
}

Supports belt_supports(const TransitionLayout& layout, const Patch& patch, const SupportRequest& request) {
    Layer layer(patch, request);
    if (request.half) layer.symmetry_line();
    for (const IdlerSet& set : idler_sets(layout, 0))
        if (set.support == Support::held) layer.held_station(layout, set);
    layer.pulley_line(layout.pulley);
    if (layout.trough.support == Support::held)
        layer.held_trough(layout);
    else if (!request.endless)
        layer.mid_span();
    return layer.close();
}

Supports bay_supports(const Patch& patch, SetPlane plane, Parity parity, bool free_end) {
    SupportRequest request;
    request.half = patch.across.begin() == 0;
    request.parity = parity;
    Layer layer(patch, request);
    if (request.half) layer.symmetry_line();
    layer.set_plane(plane);
    if (!free_end) layer.mid_span();
    return layer.close();
}

}  // namespace swale
