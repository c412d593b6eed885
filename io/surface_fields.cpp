#include "io/surface_fields.h"

namespace swale {

const std::vector<SurfaceField>& surface_fields() {
    using Point = const SurfacePoint&;
    const std::vector<std::string> space = {"x", "y", "z"};
    const std::vector<std::string> strains = {"along", "across", "shear doubled"};
    const std::vector<std::string> curvatures = {"along", "across", "twist doubled"};
    static const std::vector<SurfaceField> fields = {
        {"x_mm", "mm", {}, [](Point point, int) { return point.x; }},
        {"y_mm", "mm", {}, [](Point point, int) { return point.y; }},
        {"strain", "1", {}, [](Point point, int) { return point.strain; }},
        {"displacement_mm", "mm", space, [](Point point, int i) { return point.displacement[i]; }},
        {"membrane_strain", "1", strains, [](Point point, int i) { return point.membrane_strain[i]; }},
        {"curvature_per_mm", "1/mm", curvatures, [](Point point, int i) { return point.curvature[i]; }},
        {"top_strain", "1", strains, [](Point point, int i) { return point.top_strain[i]; }},
        {"bottom_strain", "1", strains, [](Point point, int i) { return point.bottom_strain[i]; }},
        {"N_N_per_mm", "N/mm", {"along", "across", "shear"}, [](Point point, int i) { return point.force[i]; }},
        {"M_N", "N", {"along", "across", "twist"}, [](Point point, int i) { return point.moment[i]; }},
        {"contact_pressure_MPa", "MPa", {}, [](Point point, int) { return point.contact_pressure; }},
    };
    return fields;
}

}  // namespace swale
