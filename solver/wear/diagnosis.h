#pragma once

#include "solver/wear/shape_table.h"
#include "solver/wear_diagnosis.h"

namespace swale {

/// The table of shapes that a survey's belt needs; it serves every survey of that belt.
ShapeTable shapes_of(const WearSurvey& survey);

WearDiagnosis diagnose(const WearSurvey& survey, const ShapeTable& table);

}  // namespace swale
