#include "io/hdf5/stored_surface.h"

#include "io/file_error.h"

#include <algorithm>

namespace swale {

namespace {

/// A column with `count` times `components` numbers.
std::vector<double> column(const Hdf5Source& group, const std::string& name, size_t count, size_t components,
                           const std::filesystem::path& path) {
    std::vector<double> values = group.numbers(name);
    if (values.size() != count * components) throw FileError(path, name + " is not as long as its neighbours");
    return values;
}

/// The members of a point that a table or the surface keeps, by the name of their column.
void read_vectors(const Hdf5Source& group, const std::string& name, Eigen::Vector3d SurfacePoint::*member,
                  const std::filesystem::path& path, std::vector<SurfacePoint>& points) {
    const std::vector<double> values = column(group, name, points.size(), 3, path);
    for (size_t k = 0; k < points.size(); ++k) points[k].*member = Eigen::Map<const Eigen::Vector3d>(&values[3 * k]);
}

template <class Set>
void read_numbers(const Hdf5Source& group, const std::string& name, const std::filesystem::path& path, size_t count, Set set) {
    const std::vector<double> values = column(group, name, count, 1, path);
    for (size_t k = 0; k < count; ++k) set(k, values[k]);
}

BeltSurface surface(const Hdf5Source& group, const std::filesystem::path& path) {
    const std::vector<double> x = group.numbers("x_mm");
    BeltSurface surface;
    surface.points.resize(x.size());
    auto& points = surface.points;
    for (size_t k = 0; k < x.size(); ++k) points[k].x = x[k];
    read_numbers(group, "y_mm", path, x.size(), [&](size_t k, double value) { points[k].y = value; });
    read_numbers(group, "strain", path, x.size(), [&](size_t k, double value) { points[k].strain = value; });
    read_numbers(group, "contact_pressure_MPa", path, x.size(),
                 [&](size_t k, double value) { points[k].contact_pressure = value; });
    read_vectors(group, "position_mm", &SurfacePoint::position, path, points);
    read_vectors(group, "displacement_mm", &SurfacePoint::displacement, path, points);
    read_vectors(group, "membrane_strain", &SurfacePoint::membrane_strain, path, points);
    read_vectors(group, "curvature_per_mm", &SurfacePoint::curvature, path, points);
    read_vectors(group, "top_strain", &SurfacePoint::top_strain, path, points);
    read_vectors(group, "bottom_strain", &SurfacePoint::bottom_strain, path, points);
    read_vectors(group, "N_N_per_mm", &SurfacePoint::force, path, points);
    read_vectors(group, "M_N", &SurfacePoint::moment, path, points);
    const auto next_row = std::ranges::adjacent_find(x, [](double here, double next) { return here < next; });
    surface.across = next_row == x.end() ? static_cast<int>(x.size()) : static_cast<int>(next_row - x.begin()) + 1;
    surface.along = surface.across > 0 ? static_cast<int>(x.size()) / surface.across : 0;
    if (static_cast<size_t>(surface.along) * surface.across != x.size())
        throw FileError(path, "the points of a surface make no grid");
    return surface;
}

std::vector<CrossSection> sections(const Hdf5Source& group, const std::filesystem::path& path) {
    const std::vector<std::string> names = group.texts("section");
    std::vector<SurfacePoint> points(names.size());
    const auto fill = [&](const char* name, auto set) { read_numbers(group, name, path, points.size(), set); };
    fill("x_mm", [&](size_t k, double value) { points[k].x = value; });
    fill("y_mm", [&](size_t k, double value) { points[k].y = value; });
    fill("spatial_y_mm", [&](size_t k, double value) { points[k].position.y() = value; });
    fill("z_mm", [&](size_t k, double value) { points[k].position.z() = value; });
    fill("strain", [&](size_t k, double value) { points[k].strain = value; });
    fill("tension_N_per_mm", [&](size_t k, double value) { points[k].force[0] = value; });
    fill("transverse_curvature_per_mm", [&](size_t k, double value) { points[k].curvature[1] = value; });
    fill("contact_pressure_MPa", [&](size_t k, double value) { points[k].contact_pressure = value; });
    std::vector<CrossSection> list;
    for (size_t k = 0; k < names.size(); ++k) {
        if (list.empty() || list.back().name != names[k]) list.push_back({names[k], {}});
        list.back().points.push_back(points[k]);
    }
    return list;
}

std::vector<AlongRow> rows_along(const Hdf5Source& group, const std::filesystem::path& path) {
    std::vector<AlongRow> rows(group.numbers("x_mm").size());
    const auto fill = [&](const char* name, auto set) { read_numbers(group, name, path, rows.size(), set); };
    fill("x_mm", [&](size_t k, double value) { rows[k].edge.x = rows[k].junction.x = rows[k].centre.x = value; });
    fill("spatial_x_mm", [&](size_t k, double value) { rows[k].centre.position.x() = value; });
    fill("edge_strain", [&](size_t k, double value) { rows[k].edge.strain = value; });
    fill("junction_strain", [&](size_t k, double value) { rows[k].junction.strain = value; });
    fill("centre_strain", [&](size_t k, double value) { rows[k].centre.strain = value; });
    fill("edge_z_mm", [&](size_t k, double value) { rows[k].edge.position.z() = value; });
    fill("junction_z_mm", [&](size_t k, double value) { rows[k].junction.position.z() = value; });
    fill("centre_z_mm", [&](size_t k, double value) { rows[k].centre.position.z() = value; });
    fill("edge_tension_N_per_mm", [&](size_t k, double value) { rows[k].edge.force[0] = value; });
    fill("centre_tension_N_per_mm", [&](size_t k, double value) { rows[k].centre.force[0] = value; });
    fill("junction_curvature_per_mm", [&](size_t k, double value) { rows[k].junction.curvature[1] = value; });
    return rows;
}

}  // namespace

void read_stored_surface(const Hdf5Source& state, const std::filesystem::path& path, StateResult& result) {
    result.surface = surface(state.group("surface"), path);
    result.across = sections(state.group("across"), path);
    result.along = rows_along(state.group("along"), path);
}

std::vector<NamedRoll> read_stored_rolls(const Hdf5Source& root, const std::filesystem::path& path) {
    const Hdf5Source group = root.group("rolls");
    std::vector<NamedRoll> rolls;
    for (const std::string& name : group.texts("name")) rolls.push_back({name, {}});
    const auto vectors = [&](const char* name, Eigen::Vector3d Roll::*member) {
        const std::vector<double> values = column(group, name, rolls.size(), 3, path);
        for (size_t k = 0; k < rolls.size(); ++k) rolls[k].roll.*member = Eigen::Map<const Eigen::Vector3d>(&values[3 * k]);
    };
    vectors("centre", &Roll::centre);
    vectors("axis", &Roll::axis);
    vectors("up", &Roll::up);
    read_numbers(group, "radius", path, rolls.size(), [&](size_t k, double value) { rolls[k].roll.radius = value; });
    read_numbers(group, "half_length", path, rolls.size(), [&](size_t k, double value) { rolls[k].roll.half_length = value; });
    read_numbers(group, "end_radius", path, rolls.size(), [&](size_t k, double value) { rolls[k].roll.end_radius = value; });
    return rolls;
}

}  // namespace swale
