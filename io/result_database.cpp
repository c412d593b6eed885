#include "io/result_database.h"

#include "io/file_error.h"
#include "io/hdf5/case_groups.h"
#include "io/hdf5/reader.h"
#include "io/hdf5/result_layout.h"
#include "io/hdf5/state_group.h"
#include "io/hdf5/writer.h"

#include <algorithm>

namespace swale {

namespace {

Hdf5Image build(const RunRecord& record, const std::string& written_at) {
    Hdf5Image image("result.h5");
    const Hdf5Group root = image.root();
    write_case_groups(root, record, written_at);
    const Hdf5Group states = root.group("states");
    for (size_t i = 0; i < record.result.states.size(); ++i)
        write_state_group(states.group(std::to_string(i + 1)), record.transition.states.at(i), record.result.states[i]);
    return image;
}

void refuse_foreign(const Hdf5Source& root, const std::filesystem::path& path) {
    if (!root.has_attribute("format") || root.text_attribute("format") != result_layout::format)
        throw FileError(path, "is no result file of this program");
    const int found = root.integer_attribute("format_version");
    if (found > result_layout::format_version)
        throw FileError(path, "has format " + std::to_string(found) + ", this program reads up to format " +
                                  std::to_string(result_layout::format_version));
}

BeltShape read_shape(const Hdf5Source& group, const std::filesystem::path& path) {
    BeltShape shape;
    shape.knots_along = group.numbers("knots_along");
    shape.knots_across = group.numbers("knots_across");
    const std::vector<double> points = group.numbers("control_points");
    const size_t along = shape.knots_along.size(), across = shape.knots_across.size();
    if (along < 8 || across < 8 || points.size() != (along - 4) * (across - 4) * 3)
        throw FileError(path, "knots and control points of a state don't fit each other");
    shape.control_points.resize(3, static_cast<Eigen::Index>(points.size() / 3));
    std::copy(points.begin(), points.end(), shape.control_points.data());
    return shape;
}

std::optional<double> optional_number(const Hdf5Source& group, const std::string& name) {
    return group.has_attribute(name) ? std::optional(group.number_attribute(name)) : std::nullopt;
}

std::optional<BeltMode> read_mode(const Hdf5Source& state, const std::string& name) {
    if (!state.has_link(name)) return {};
    const Hdf5Source group = state.group(name);
    BeltMode mode{{}, group.number_attribute("x_mm"), group.number_attribute("y_mm")};
    const std::vector<double> values = group.numbers("motion");
    for (size_t k = 0; k + 2 < values.size(); k += 3) mode.motion.emplace_back(values[k], values[k + 1], values[k + 2]);
    return mode;
}

StoredState read_state(const Hdf5Source& group, const std::filesystem::path& path) {
    StoredState state;
    state.asked = {group.text_attribute("name"), optional_number(group, "total_N"), optional_number(group, "elongation_mm"),
                   optional_number(group, "loaded").has_value()};
    if (group.text_attribute("status") == result_layout::converged) state.status = SolveStatus::converged;
    state.reason = group.text_attribute("reason");
    if (group.has_link("shape")) state.shape = read_shape(group.group("shape"), path);
    state.mode_symmetric = read_mode(group, result_layout::symmetric_mode);
    state.mode_antisymmetric = read_mode(group, result_layout::antisymmetric_mode);
    return state;
}

}  // namespace

std::string result_database(const RunRecord& record, const std::string& written_at) {
    const Hdf5Silence silence;
    return build(record, written_at).bytes();
}

StoredRun read_result_database(const std::filesystem::path& path) {
    const Hdf5Silence silence;
    const Hdf5Source root(path);
    refuse_foreign(root, path);
    StoredRun run;
    run.swale_version = root.text_attribute("swale_version");
    run.written_at = root.text_attribute("written_at");
    run.case_file = root.text_attribute("case_file");
    run.case_text = root.text("case_text");
    if (root.has_link("catalogue_text")) run.catalogue_text = root.text("catalogue_text");
    run.sets = root.group("settings").integer_attribute("sets");
    const Hdf5Source states = root.group("states");
    for (size_t i = 1; i <= states.size(); ++i) run.states.push_back(read_state(states.group(std::to_string(i)), path));
    return run;
}

}  // namespace swale
