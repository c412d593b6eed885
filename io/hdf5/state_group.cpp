#include "io/hdf5/state_group.h"

#include "io/hdf5/result_layout.h"
#include "io/hdf5/rows.h"
#include "io/sample_table.h"
#include "io/surface_fields.h"
#include "io/verdict.h"

namespace swale {

namespace {

void write_shape(const Hdf5Group& root, const BeltShape& shape) {
    if (shape.control_points.cols() == 0) return;
    const Hdf5Group group = root.group("shape");
    const auto numbers_along = [&](const char* name, const std::vector<double>& knots) {
        group.numbers(name, "mm", {knots.size()}, knots);
    };
    numbers_along("knots_along", shape.knots_along);
    numbers_along("knots_across", shape.knots_across);
    const double* first = shape.control_points.data();
    group.numbers("control_points", "mm", {shape.knots_along.size() - 4, shape.knots_across.size() - 4, 3},
                  {first, first + shape.control_points.size()});
}

void write_reading(const Hdf5Group& group, const char* name, const char* unit, const Reading& reading) {
    const Hdf5Group set = group.number(name, unit, reading.value);
    set.attribute("error", number_or_nan(reading.error));
    set.attribute("far_end_error", number_or_nan(reading.far_end_error));
    set.attribute("x_mm", reading.x);
    set.attribute("y_mm", reading.y);
}

void write_readings(const Hdf5Group& root, const StateResult& state) {
    const Hdf5Group group = root.group("readings");
    write_reading(group, "edge_strain_max", "1", state.edge_strain_max);
    write_reading(group, "centre_strain_min", "1", state.centre_strain_min);
    write_reading(group, "edge_tension_max", "N/mm", state.edge_tension_max);
    write_reading(group, "tension_min", "N/mm", state.tension_min);
    write_reading(group, "junction_bending_strain_max", "1", state.junction_bending_strain_max);
    write_reading(group, "surface_strain_max", "1", state.surface_strain_max);
    write_reading(group, "wing_line_force_max", "N/mm", state.wing_line_force_max);
    write_reading(group, "roll_force_max", "N", state.roll_force_max);
}

void write_supports(const Hdf5Group& root, const std::vector<SupportForce>& supports) {
    const Hdf5Group group = root.group("supports");
    write_texts(group, "name", supports, [](const SupportForce& support) { return support.name; });
    write_numbers(group, "x", "mm", supports, [](const SupportForce& support) { return support.x; });
    write_vectors(group, "force", "N", supports, [](const SupportForce& support) { return support.force; });
    write_numbers(group, "lift_off", "mm", supports,
                  [](const SupportForce& support) { return number_or_nan(support.lift_off); });
    for (const int end : {0, 1})
        write_numbers(group, end == 0 ? "touched_from" : "touched_to", "mm", supports, [end](const SupportForce& support) {
            return support.touched ? (*support.touched)[end] : number_or_nan({});
        });
}

template <class Row>
void write_columns(const Hdf5Group& group, const std::vector<Column<Row>>& columns, const std::vector<Row>& rows) {
    for (const Column<Row>& column : columns) write_numbers(group, column.name, column.unit, rows, column.value);
}

void write_across(const Hdf5Group& root, const std::vector<CrossSection>& sections) {
    std::vector<SurfacePoint> points;
    std::vector<std::string> names;
    for (const CrossSection& section : sections) {
        points.insert(points.end(), section.points.begin(), section.points.end());
        names.insert(names.end(), section.points.size(), section.name);
    }
    const Hdf5Group group = root.group("across");
    group.texts("section", names);
    write_columns(group, across_columns(), points);
}

void write_field(const Hdf5Group& group, const SurfaceField& field, const BeltSurface& surface) {
    std::vector<double> values;
    values.reserve(surface.points.size() * static_cast<size_t>(field.size()));
    for (const SurfacePoint& point : surface.points)
        for (int i = 0; i < field.size(); ++i) values.push_back(field.value(point, i));
    std::vector<hsize_t> shape = {static_cast<hsize_t>(surface.along), static_cast<hsize_t>(surface.across)};
    if (!field.components.empty()) shape.push_back(field.components.size());
    const Hdf5Group set = group.numbers(field.name, field.unit, shape, values);
    std::string components;
    for (const std::string& component : field.components) components += (components.empty() ? "" : ", ") + component;
    if (!components.empty()) set.attribute("components", components);
}

void write_surface(const Hdf5Group& root, const BeltSurface& surface) {
    const Hdf5Group group = root.group("surface");
    write_field(group, {"position_mm", "mm", {"x", "y", "z"}, [](const SurfacePoint& p, int i) { return p.position[i]; }},
                surface);
    for (const SurfaceField& field : surface_fields()) write_field(group, field, surface);
}

void write_mode(const Hdf5Group& root, const char* name, const std::optional<BeltMode>& mode, const BeltSurface& surface) {
    if (!mode) return;
    const Hdf5Group group = root.group(name);
    std::vector<double> values;
    for (const Eigen::Vector3d& motion : mode->motion) values.insert(values.end(), motion.begin(), motion.end());
    const std::vector<hsize_t> shape = {static_cast<hsize_t>(surface.along), static_cast<hsize_t>(surface.across), 3};
    group.numbers("motion", "1", shape, values).attribute("components", std::string("x, y, z"));
    group.attribute("x_mm", mode->x);
    group.attribute("y_mm", mode->y);
}

void write_newton(const Hdf5Group& root, const std::vector<NewtonRecord>& records) {
    const Hdf5Group group = root.group("newton");
    write_texts(group, "grid", records, [](const NewtonRecord& entry) { return entry.grid; });
    group.integers("unknowns", column_of(records, [](const NewtonRecord& entry) { return entry.unknowns; }));
    group.integers("iterations", column_of(records, [](const NewtonRecord& entry) { return entry.iterations; }));
    write_numbers(group, "residual", "1", records, [](const NewtonRecord& entry) { return entry.residual; });
    write_numbers(group, "tolerance", "1", records, [](const NewtonRecord& entry) { return entry.tolerance; });
}

void write_solution(const Hdf5Group& group, const StateResult& state) {
    group.attribute("tension_N", state.tension);
    group.attribute("pulley_tension_N", state.pulley_tension);
    group.attribute("far_strain", state.far_strain);
    group.attribute("excluded_mm", state.excluded);
    group.attribute("eigenvalue_symmetric_N_per_mm3", number_or_nan(state.eigenvalue_symmetric));
    group.attribute("eigenvalue_antisymmetric_N_per_mm3", number_or_nan(state.eigenvalue_antisymmetric));
    write_readings(group, state);
    write_supports(group, state.supports);
    write_columns(group.group("along"), along_columns(), state.along);
    write_across(group, state.across);
    write_surface(group, state.surface);
    write_mode(group, result_layout::symmetric_mode, state.mode_symmetric, state.surface);
    write_mode(group, result_layout::antisymmetric_mode, state.mode_antisymmetric, state.surface);
}

}  // namespace

void write_state_group(const Hdf5Group& group, const TensionState& asked, const StateResult& state) {
    group.attribute("name", state.name);
    group.attribute("status", std::string(converged(state) ? result_layout::converged : result_layout::not_converged));
    group.attribute("reason", state.reason);
    if (asked.total) group.attribute("total_N", *asked.total);
    if (asked.elongation) group.attribute("elongation_mm", *asked.elongation);
    if (asked.loaded) group.attribute("loaded", 1.0);
    write_shape(group, state.shape);
    if (converged(state)) write_solution(group, state);
    write_newton(group, state.newton);
    group.texts("notes", state.notes);
}

}  // namespace swale
