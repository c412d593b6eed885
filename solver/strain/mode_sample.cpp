#include "solver/strain/mode_sample.h"

namespace swale {

namespace {

using Eigen::Vector3d;

// Control points of the curve across the belt at material x.
Eigen::Matrix3Xd curve_at(const Patch& patch, const ControlPoints& motion, double x) {
    const int across = patch.across.size();
    const BasisValues along = patch.along.at(x);
    Eigen::Matrix3Xd curve = Eigen::Matrix3Xd::Zero(3, across);
    for (int a = 0; a < 4; ++a) curve += along.value[a] * motion.middleCols(patch.index(along.first + a, 0), across);
    return curve;
}

Vector3d value_at(const Eigen::Matrix3Xd& curve, const BasisValues& across) {
    Vector3d value = Vector3d::Zero();
    for (int b = 0; b < 4; ++b) value += across.value[b] * curve.col(across.first + b);
    return value;
}

// What the mirror image at y = 0 moves by.
Vector3d mirrored(const Vector3d& motion, Parity parity) {
    const Vector3d even(motion.x(), -motion.y(), motion.z());
    return parity == Parity::symmetric ? even : Vector3d(-even);
}

void normalise(const BeltSurface& surface, BeltMode& mode) {
    std::size_t most = 0;
    for (std::size_t k = 0; k < mode.motion.size(); ++k)
        if (mode.motion[k].squaredNorm() >= mode.motion[most].squaredNorm()) most = k;
    mode.x = surface.points[most].x;
    mode.y = surface.points[most].y;
    const double scale = (mode.motion[most].z() < 0 ? -1 : 1) / mode.motion[most].norm();
    for (Vector3d& motion : mode.motion) motion *= scale;
}

}  // namespace

BeltMode sample_mode(const Patch& patch, const ControlPoints& motion, Parity parity, const BeltSurface& surface) {
    const double stretch = patch.along.end() / surface.points.back().x;
    const auto first_row = surface.points.begin();
    std::vector<BasisValues> across;
    for (auto point = first_row; point != first_row + surface.across; ++point) {
        const bool modelled = point->y >= patch.across.begin();
        across.push_back(patch.across.at(modelled ? point->y : -point->y));
    }
    BeltMode mode;
    for (std::size_t k = 0; k < surface.points.size(); k += across.size()) {
        const Eigen::Matrix3Xd curve = curve_at(patch, motion, surface.points[k].x * stretch);
        for (std::size_t j = 0; j < across.size(); ++j) {
            const Vector3d value = value_at(curve, across[j]);
            const bool modelled = surface.points[j].y >= patch.across.begin();
            mode.motion.push_back(modelled ? value : mirrored(value, parity));
        }
    }
    normalise(surface, mode);
    return mode;
}

}  // namespace swale
