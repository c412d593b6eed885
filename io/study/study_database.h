#pragma once

#include "io/study/study_plan.h"

#include <filesystem>
#include <map>
#include <string>

namespace swale {

/// The bytes of a study's database: HDF5, plain columns that h5py or any reader joins by `case`. Units mm, N, rad as named.
/// Numbers that are not there (not solved, not judged, not estimated) are NaN; every column of numbers has an attribute "unit".
/// The same records make the same bytes, `seconds` and `peak_memory_MB` apart.
///
///   /              attributes: format "swale study", format_version, swale_version, title, cases (of the whole study), rows
///   /study_text    the study file verbatim;  /case_text the base case verbatim
///   /axes          names of what is varied;  /input_columns the columns of /inputs that hold their texts
///   /cases         one row a case: case, status ("solved", "bad input", "fault"), verdict, reason, case_text, belt_width_mm,
///                  distance_mm, lift_mm, trough_depth_mm, trough_angle_rad, sets, seconds, peak_memory_MB
///   /inputs        one row a case: a text column an axis, and NAME_number where the text begins with a number
///   /states        one row a case and state: case, state, status, reason, tension_N, ..., and of each reading its value,
///                  error, far_end_error, x_mm, y_mm
///   /criteria      one row a judgement: case, state, name, value, limit, unit, utilisation, passed (NaN not judged, 0, 1), ...
///   /hand_methods  one row a case and method: case, name, minimum_distance_mm, edge_strain, centre_strain
///   /supports      one row a case, state and support: case, state, name, x_mm, force_x_N, force_y_N, force_z_N, lift_off_mm
///   /curves        one row a case, state and place along the belt: case, state, the columns of along.csv
///   /fields        of a study with `fields = true`: one group a case, named by its number, in it one group a converged state
///                  in their order, 1, 2, ..., with attribute "state" and the fields of io/surface_fields.h, (along, across) or
///                  (along, across, components), deflated
std::string study_database(const StudyPlan& plan, const std::map<int, std::string>& records, const std::filesystem::path& path);

}  // namespace swale
