#pragma once

#include "io/wear/wear_report.h"

#include <string>

namespace swale {

/// For people: verdict, explanations, fitted values, rolls, further look, what follows, cautions. Lines of at most 100
/// characters.
std::string wear_answer(const WearReport& report);

/// For programs.
std::string wear_json(const WearReport& report);

}  // namespace swale
