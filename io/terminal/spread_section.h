#pragma once

#include "solver/spread.h"

#include <string>

namespace swale {

/// How often a limit is exceeded and what would keep it below the wanted level, in a sentence.
std::string spread_headline(const ToleranceSpread& spread, const Tolerances& tolerances);

/// Every judged criterion with its spread.
std::string spread_tables(const ToleranceSpread& spread);

}  // namespace swale
