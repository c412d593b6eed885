#include "io/study/study_fields.h"

#include "io/surface_fields.h"

#include <limits>
#include <string>
#include <vector>

namespace swale {

namespace {

using Json = nlohmann::ordered_json;

std::vector<double> numbers_of(const Json& values) {
    std::vector<double> numbers;
    numbers.reserve(values.size());
    for (const Json& value : values)
        numbers.push_back(value.is_number() ? value.get<double>() : std::numeric_limits<double>::quiet_NaN());
    return numbers;
}

void write_state(const Hdf5Group& group, const Json& state) {
    group.attribute("state", state.at("state").get<std::string>());
    for (const SurfaceField& field : surface_fields()) {
        std::vector<hsize_t> shape{state.at("along").get<hsize_t>(), state.at("across").get<hsize_t>()};
        if (!field.components.empty()) shape.push_back(field.components.size());
        group.packed_numbers(field.name, field.unit, shape, numbers_of(state.at("values").at(field.name)));
    }
}

}  // namespace

void write_fields(const Hdf5Group& fields, int number, const Json& states) {
    const Hdf5Group group = fields.group(std::to_string(number));
    int place = 0;
    for (const Json& state : states) write_state(group.group(std::to_string(++place)), state);
}

}  // namespace swale
