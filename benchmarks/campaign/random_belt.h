#pragma once

#include "benchmarks/campaign/draw.h"
#include "materials/belt.h"

namespace swale::benchmark {

/// A belt of the catalogue whose strength suits the width, or one in four times a section of its own: thin and soft to thick,
/// D22 from 1 to 100 N m, 5 to 60 kg/m^2.
Belt random_belt(Draw& draw, double width);

}  // namespace swale::benchmark
