#pragma once

#include "solver/as_built.h"

#include <string>

namespace swale {

/// How far the measured transition is from its limits and what buys most, in sentences.
std::string as_built_headline(const AsBuilt& as_built);

/// The measured one, the drawn one and the changes; what moves the answer to first order.
std::string as_built_tables(const AsBuilt& as_built);

}  // namespace swale
