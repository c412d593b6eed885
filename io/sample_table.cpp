#include "io/sample_table.h"

namespace swale {

const std::vector<Column<AlongRow>>& along_columns() {
    static const std::vector<Column<AlongRow>> columns = {
        {"x_mm", "mm", [](const AlongRow& row) { return row.centre.x; }},
        {"spatial_x_mm", "mm", [](const AlongRow& row) { return row.centre.position.x(); }},
        {"edge_strain", "1", [](const AlongRow& row) { return row.edge.strain; }},
        {"junction_strain", "1", [](const AlongRow& row) { return row.junction.strain; }},
        {"centre_strain", "1", [](const AlongRow& row) { return row.centre.strain; }},
        {"edge_z_mm", "mm", [](const AlongRow& row) { return row.edge.position.z(); }},
        {"junction_z_mm", "mm", [](const AlongRow& row) { return row.junction.position.z(); }},
        {"centre_z_mm", "mm", [](const AlongRow& row) { return row.centre.position.z(); }},
        {"edge_tension_N_per_mm", "N/mm", [](const AlongRow& row) { return row.edge.force[0]; }},
        {"centre_tension_N_per_mm", "N/mm", [](const AlongRow& row) { return row.centre.force[0]; }},
        {"junction_curvature_per_mm", "1/mm", [](const AlongRow& row) { return row.junction.curvature[1]; }},
    };
    return columns;
}

const std::vector<Column<SurfacePoint>>& across_columns() {
    static const std::vector<Column<SurfacePoint>> columns = {
        {"x_mm", "mm", [](const SurfacePoint& point) { return point.x; }},
        {"y_mm", "mm", [](const SurfacePoint& point) { return point.y; }},
        {"spatial_y_mm", "mm", [](const SurfacePoint& point) { return point.position.y(); }},
        {"strain", "1", [](const SurfacePoint& point) { return point.strain; }},
        {"tension_N_per_mm", "N/mm", [](const SurfacePoint& point) { return point.force[0]; }},
        {"z_mm", "mm", [](const SurfacePoint& point) { return point.position.z(); }},
        {"transverse_curvature_per_mm", "1/mm", [](const SurfacePoint& point) { return point.curvature[1]; }},
        {"contact_pressure_MPa", "MPa", [](const SurfacePoint& point) { return point.contact_pressure; }},
    };
    return columns;
}

}  // namespace swale
