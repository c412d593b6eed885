#pragma once

#include "io/result_file.h"
#include "solver/transition_result.h"

namespace swale {

/// Files for VTK readers (ParaView and the like), all in the folder `vtk`; in every file lengths are mm, forces N:
///   states.pvd                  the converged states as a series, time = number of the state in the case, from 1
///   state-1-<name>.vtm          one state: block "belt" and block "rolls"
///   state-1-<name>-belt.vts     the deformed carcass mid-surface with the fields of io/surface_fields.h as point data, and
///                               the state's name as field data "state"
///   rolls.vtp                   rolls and pulley with rounded ends; cell data "roll" (number) and "name"
/// States without a solution are left out; block "rolls" is absent where nothing rolls. The bytes depend on the result alone.
/// Coordinates are double, fields single precision (the full state is in the HDF5 file). A series comes after what it names.
ResultFileList belt_vtk(const TransitionResult& result);

}  // namespace swale
