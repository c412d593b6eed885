#pragma once

#include "mesh/cubic_basis.h"

#include <Eigen/Core>

#include <array>
#include <vector>

namespace swale {

/// Control points of the patch, one a column [mm]; column index(i, j) = i * across.size() + j.
using ControlPoints = Eigen::Matrix3Xd;

/// Columns of the control points that one span touches, 4 a + b for basis a along and b across.
using SpanNodes = std::array<int, 16>;

/// Where the belt surface is and its derivatives with respect to material x (along) and y (across).
struct SurfaceJet {
    Eigen::Vector3d position, along, across, along2, across2, mixed;
};

/// One rectangular bicubic patch over the flat, unstretched belt; its parameters are material coordinates in mm, so the
/// reference metric is the identity.
struct Patch {
    CubicBasis along;
    CubicBasis across;

    int points() const { return along.size() * across.size(); }
    int index(int i, int j) const { return i * across.size() + j; }

    SpanNodes nodes(int span_along, int span_across) const;

    SurfaceJet jet(const ControlPoints& points, double x, double y) const;

    /// Control points f(Greville abscissae): a smooth surface near f, exact for linear f.
    template <class Function>
    ControlPoints follow(const Function& f) const {
        const std::vector<double> xs = along.greville(), ys = across.greville();
        ControlPoints net(3, points());
        for (int i = 0; i < along.size(); ++i)
            for (int j = 0; j < across.size(); ++j) net.col(index(i, j)) = f(xs[i], ys[j]);
        return net;
    }

    /// The surface that meets f at the Greville abscissae; exact for a spline of this patch.
    template <class Function>
    ControlPoints interpolate(const Function& f) const {
        return meeting(follow(f));
    }

    /// The same surface on a patch whose breaks contain this one's.
    ControlPoints refine(const ControlPoints& points, const Patch& fine) const;

  private:
    /// Control points whose surface has these values at the Greville abscissae.
    ControlPoints meeting(const ControlPoints& values) const;
    /// One component, rows along, columns across.
    Eigen::MatrixXd net(const ControlPoints& points, int component) const;
};

}  // namespace swale
