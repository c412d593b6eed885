#pragma once

#include "mesh/patch.h"
#include "solver/contact/contact_energy.h"
#include "solver/equilibrium/system.h"
#include "solver/return_roll.h"

#include <memory>

namespace swale {

/// A belt on a return roll as a system of equations. Here x runs across the belt, y along the run and z up: numbered along the
/// few spans of the run the tangent's band is half as wide. y = 0 is the roll's plane, z = 0 the roll's top.
struct ReturnModel {
    Patch patch;
    bool half = true;  ///< x from 0 to W/2
    std::shared_ptr<const ContactEnergy> contact;
    System system;
};

/// How far along the run from the roll's plane the belt may touch it [mm]: wider than what its slope can wrap.
inline constexpr double contact_reach = 40;

/// Spans short at edges and junctions, and along the run at the roll.
Patch return_patch(const ReturnRun& run, bool half, const ReturnGrid& grid);

/// `mid_span`: where the belt's end lies. One free displacement of the whole end would couple all of the belt's width and cost
/// most of the time; so the end is held and moved until its reaction is the tension.
ReturnModel return_model(const ReturnRun& run, const BeltMemory& memory, const Patch& patch, double mid_span);

/// Of the whole belt at mid-span [N].
double tension_at_mid_span(const ReturnModel& model, const ControlPoints& points);

/// Flat on the roll, stretched by the tension.
ControlPoints flat_on_roll(const ReturnRun& run, const Patch& patch);

/// What a solved model presses on the roll with.
RollContact read_contact(const ReturnRun& run, const ReturnModel& model, const ControlPoints& points);

}  // namespace swale
