#include "solver/shell/shell_point.h"

#include "materials/membrane_law.h"

#include <Eigen/Geometry>

namespace swale {

namespace {

using Eigen::Matrix3d;
using Eigen::Vector3d;

// The names of the jet's columns.
enum { a1, a2, a11, a22, a12 };

// Surface normal; m = r,x x r,y = J n.
struct Normal {
    Vector3d n;
    double J;
};

Normal normal_of(const PointJet& jet) {
    const Vector3d m = jet.col(a1).cross(jet.col(a2));
    const double J = m.norm();
    return {m / J, J};
}

Matrix3d skew(const Vector3d& v) {
    Matrix3d s;
    s << 0, -v.z(), v.y(), v.z(), 0, -v.x(), -v.y(), v.x(), 0;
    return s;
}

PointStrain strain_of(const PointJet& jet, const Vector3d& n) {
    // e_ij = (r,i . r,j - delta_ij) / 2 and k_ij = r,ij . n; Kiendl et al., CMAME 198 (2009) 3902, with a flat reference.
    PointStrain strain;
    strain.membrane = {(jet.col(a1).squaredNorm() - 1) / 2, (jet.col(a2).squaredNorm() - 1) / 2, jet.col(a1).dot(jet.col(a2))};
    strain.curvature = {jet.col(a11).dot(n), jet.col(a22).dot(n), 2 * jet.col(a12).dot(n)};
    return strain;
}

// Part of c normal to n: what is left of a second derivative when the normal turns.
Vector3d tangential(const Vector3d& c, const Vector3d& n) {
    return c - c.dot(n) * n;
}

// d(c . n) = n . dc + (a2 x t)/J . da1 + (t x a1)/J . da2 with t = c - (c . n) n.
void add_curvature_gradient(const PointJet& jet, const Normal& normal, const Vector3d& c, double factor, int column,
                            PointJet& g) {
    const Vector3d t = factor / normal.J * tangential(c, normal.n);
    g.col(column) += factor * normal.n;
    g.col(a1) += jet.col(a2).cross(t);
    g.col(a2) += t.cross(jet.col(a1));
}

// Rows e11, e22, e12, k11, k22, k12: their derivatives with respect to the jet, 3 p + i.
Eigen::Matrix<double, 6, 15> strain_gradients(const PointJet& jet, const Normal& normal) {
    std::array<PointJet, 6> rows;
    for (PointJet& row : rows) row.setZero();
    rows[0].col(a1) = jet.col(a1);
    rows[1].col(a2) = jet.col(a2);
    rows[2].col(a1) = jet.col(a2);
    rows[2].col(a2) = jet.col(a1);
    add_curvature_gradient(jet, normal, jet.col(a11), 1, a11, rows[3]);
    add_curvature_gradient(jet, normal, jet.col(a22), 1, a22, rows[4]);
    add_curvature_gradient(jet, normal, jet.col(a12), 2, a12, rows[5]);
    Eigen::Matrix<double, 6, 15> gradients;
    for (int k = 0; k < 6; ++k) gradients.row(k) = Eigen::Map<const Eigen::Matrix<double, 15, 1>>(rows[k].data());
    return gradients;
}

// N11 d2e11 + N22 d2e22 + N12 d2e12.
void add_membrane_geometry(const Vector3d& N, PointTangent& H) {
    H.block<3, 3>(0, 0).diagonal().array() += N[0];
    H.block<3, 3>(3, 3).diagonal().array() += N[1];
    H.block<3, 3>(0, 3).diagonal().array() += N[2];
    H.block<3, 3>(3, 0).diagonal().array() += N[2];
}

// Second derivative of cbar . n, cbar = M11 a11 + M22 a22 + 2 M12 a12, through m = a1 x a2 = J n:
//   d2/dc dm = (I - n n^T)/J,   d2/dm dm = [-cbar n^T - n cbar^T - (cbar . n)(I - 3 n n^T)]/J^2,   dm = S1 da1 + S2 da2.
void add_bending_geometry(const PointJet& jet, const Normal& normal, const Vector3d& M, PointTangent& H) {
    const Vector3d weight(M[0], M[1], 2 * M[2]);
    const Vector3d& n = normal.n;
    const Vector3d cbar = jet.rightCols<3>() * weight;
    const Matrix3d S[2] = {-skew(jet.col(a2)), skew(jet.col(a1))};
    const Matrix3d across = (Matrix3d::Identity() - n * n.transpose()) / normal.J;
    const Matrix3d turning =
        -(cbar * n.transpose() + n * cbar.transpose() + cbar.dot(n) * (Matrix3d::Identity() - 3 * n * n.transpose())) /
        (normal.J * normal.J);
    for (int i = 0; i < 2; ++i) {
        const Matrix3d mixed = across * S[i];
        for (int k = 0; k < 3; ++k) {
            H.block<3, 3>(6 + 3 * k, 3 * i) += weight[k] * mixed;
            H.block<3, 3>(3 * i, 6 + 3 * k) += weight[k] * mixed.transpose();
        }
        for (int j = 0; j < 2; ++j) H.block<3, 3>(3 * i, 3 * j) += S[i].transpose() * turning * S[j];
    }
    // d2m = da1 x da2 twice: g . (da1 x da2) = da1 . (-skew(g)) da2 with g = tangential(cbar)/J.
    const Matrix3d twist = skew(tangential(cbar, n) / normal.J);
    H.block<3, 3>(0, 3) -= twist;
    H.block<3, 3>(3, 0) += twist;
}

}  // namespace

PointStrain point_strain(const PointJet& jet) {
    return strain_of(jet, normal_of(jet).n);
}

PointForce point_force(const Section& section, const PointStrain& strain, const Vector3d& natural_curvature) {
    return {membrane_force(section, strain.membrane), section.bending * (strain.curvature - natural_curvature)};
}

double point_energy(const PointJet& jet, const Section& section, const Vector3d& natural_curvature) {
    const PointStrain strain = point_strain(jet);
    const Vector3d bent = strain.curvature - natural_curvature;
    return membrane_energy(section, strain.membrane) + bent.dot(section.bending * bent) / 2;
}

PointJet point_gradient(const PointJet& jet, const Section& section, const Vector3d& natural_curvature) {
    const Normal normal = normal_of(jet);
    const auto [N, M] = point_force(section, strain_of(jet, normal.n), natural_curvature);
    PointJet g = PointJet::Zero();
    g.col(a1) = N[0] * jet.col(a1) + N[2] * jet.col(a2);
    g.col(a2) = N[1] * jet.col(a2) + N[2] * jet.col(a1);
    // Sum over M_ij of the gradients of k_ij: the tangential parts add up before the two cross products.
    const Vector3d weight(M[0], M[1], 2 * M[2]);
    const Vector3d t = tangential(jet.rightCols<3>() * weight, normal.n) / normal.J;
    g.rightCols<3>() = normal.n * weight.transpose();
    g.col(a1) += jet.col(a2).cross(t);
    g.col(a2) += t.cross(jet.col(a1));
    return g;
}

PointTangent point_tangent(const PointJet& jet, const Section& section, const Vector3d& natural_curvature) {
    const Normal normal = normal_of(jet);
    const PointStrain strain = strain_of(jet, normal.n);
    const auto [N, M] = point_force(section, strain, natural_curvature);
    const Eigen::Matrix<double, 6, 15> B = strain_gradients(jet, normal);
    // Membrane strains depend on r,x and r,y alone: the first six columns.
    const Eigen::Matrix<double, 3, 6> e = B.topLeftCorner<3, 6>();
    const Eigen::Matrix<double, 3, 15> k = B.bottomRows<3>();
    PointTangent H = k.transpose().lazyProduct(section.bending.lazyProduct(k).eval());
    H.topLeftCorner<6, 6>() += e.transpose().lazyProduct(membrane_tangent(section, strain.membrane).lazyProduct(e).eval());
    add_membrane_geometry(N, H);
    add_bending_geometry(jet, normal, M, H);
    return H;
}

}  // namespace swale
