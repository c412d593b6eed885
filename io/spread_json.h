#pragma once

#include "solver/spread.h"

#include <string>

namespace swale {

/// spread.json: every judged criterion with its spread, what it comes from, and how often its limit is exceeded.
std::string spread_json(const ToleranceSpread& spread, const Tolerances& tolerances, const std::string& title);

}  // namespace swale
