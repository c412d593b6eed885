#pragma once

#include "io/wear/wear_report.h"

#include <string>

namespace swale {

/// The reading of wear as one self-contained HTML page: verdict, explanations, each roll with observed and predicted contact,
/// fitted values, what would decide, what follows, what belts of each kind would press with, cautions.
std::string wear_page(const WearReport& report);

}  // namespace swale
