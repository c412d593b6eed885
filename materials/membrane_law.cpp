#include "materials/membrane_law.h"

namespace swale {

namespace {

CompressionRelief<double> relief_at(const Section& section, const Eigen::Vector3d& strain) {
    if (section.compression.linear()) return {};
    return compression_relief(section.compression, section.membrane.row(0).dot(strain));
}

}  // namespace

double membrane_energy(const Section& section, const Eigen::Vector3d& strain) {
    return strain.dot(section.membrane * strain) / 2 + relief_at(section, strain).energy / section.membrane(0, 0);
}

Eigen::Vector3d membrane_force(const Section& section, const Eigen::Vector3d& strain) {
    return section.membrane * strain + relief_at(section, strain).slope / section.membrane(0, 0) * section.membrane.col(0);
}

Eigen::Matrix3d membrane_tangent(const Section& section, const Eigen::Vector3d& strain) {
    const Eigen::Vector3d a = section.membrane.col(0);
    return section.membrane + relief_at(section, strain).curvature / section.membrane(0, 0) * a * a.transpose();
}

}  // namespace swale
