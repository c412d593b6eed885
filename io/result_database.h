#pragma once

#include "io/run_record.h"

#include <filesystem>
#include <string>
#include <vector>

namespace swale {

/// The bytes of result.h5: the full state of a run, from which it can be restored without solving. HDF5 1.8 and later read it.
/// Units mm, N, t, s, rad; every array of numbers has an attribute "unit". NaN stands for "not judged, not defined, not
/// estimated". Rows and groups are in the order of the case. Points run along the belt first, then across from -W/2 to +W/2.
///
///   /                 attributes: format "swale result", format_version, swale_version, written_at (UTC), title, case_file,
///                     verdict, units
///   /case_text        the case file verbatim
///   /catalogue_text   the catalogue of belts that the case names, verbatim; absent if it names none
///   /settings         attributes: accuracy, model ("half", "full"), grid, newton_iterations, starts, tension_path,
///                     sets (full sets in the model)
///   /belt             attributes: designation, width_mm, ...; membrane A (3, 3), bending D (3, 3), order along, across, shear
///   /belt/data        data sheet, one row a number: name, value, low, high (NaN without a range), unit, grade, source
///   /rolls            one row a roll: name, centre, axis, up (n, 3), radius, half_length, end_radius
///   /criteria         one row a judgement: name, state, value, limit, unit, utilisation, passed (-1 not judged, 0, 1),
///                     advisory (0, 1), source, x, y, where
///   /cost             attributes; with written_at all that differs between two runs
///   /states/1 ...     one group a state; attributes: name, status, reason, tension asked (total_N or elongation_mm), loaded
///   (1, of a
///                     loaded state only), and once
///                     converged tension_N, pulley_tension_N, far_strain, excluded_mm, eigenvalues
///     shape           knots_along, knots_across (open cubic knot vectors, material mm), control_points (n along, n across, 3);
///                     absent where there is none; of a state without a solution the last iterate
///     readings        one number each, with attributes error, far_end_error, x_mm, y_mm
///     supports        one row a support: name, x, force (n, 3), lift_off, touched_from, touched_to (y of the belt on it)
///     along, across   the columns of along.csv and across.csv
///     surface         position_mm and the fields of io/surface_fields.h, (along, across) or (along, across, components)
///     mode_symmetric, mode_antisymmetric    the lowest modes at the points of the surface: motion (along, across, 3), the
///                     largest of length 1, at the attributes x_mm, y_mm; absent if not found
///     newton          one row a grid: grid, unknowns, iterations, residual, tolerance
///     notes           sentences
///   readings, supports, along, across and surface are there for converged states only.
std::string result_database(const RunRecord& record, const std::string& written_at);

/// What a result file holds of one state.
struct StoredState {
    TensionState asked;
    SolveStatus status = SolveStatus::not_converged;
    std::string reason;
    BeltShape shape;                                             ///< empty if none was stored
    std::optional<BeltMode> mode_symmetric, mode_antisymmetric;  ///< at the points of the surface that `shape` restores
};

/// What restores a run: parse `case_text` with `catalogue_text`, then `restore_state` of solver/transition.h with `sets` for
/// each state's shape.
struct StoredRun {
    std::string swale_version;
    std::string written_at;
    std::string case_file;
    std::string case_text;
    std::optional<std::string> catalogue_text;
    int sets = 0;
    std::vector<StoredState> states;
};

/// Throws FileError if the file can't be read, is none of ours, is of a later format, or its arrays don't fit each other.
StoredRun read_result_database(const std::filesystem::path& path);

}  // namespace swale
