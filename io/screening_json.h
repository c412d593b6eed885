#pragma once

#include "solver/screening.h"

#include <nlohmann/json.hpp>

namespace swale {

/// The list `hand_methods` of summary.json.
nlohmann::ordered_json hand_methods_json(const Screening& screening);

}  // namespace swale
