#pragma once

#include "materials/origin.h"

#include <string>

namespace swale {

/// Changes a stiffness by a factor, and with it what is known as a share of it alone, with ranges: of A22 the A12 = nu12 A22;
/// of D11 and D22 the D12 and D66, which keep their shares of sqrt(D11 D22).
void scale_stiffness(DataSheet& sheet, const std::string& name, double factor);

}  // namespace swale
