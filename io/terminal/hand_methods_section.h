#pragma once

#include "solver/screening.h"

#include <string>

namespace swale {

/// The hand methods as a table: required distance beside the case's own, strains at that, then remarks and sources.
std::string hand_methods_table(const TransitionCase& transition, const Screening& screening);
std::string hand_methods_remarks(const Screening& screening);

/// What stands in the answer of `swale solve`: the table, the shell's row below it, and where and why they differ.
std::string hand_methods_section(const TransitionCase& transition, const TransitionResult& result);

}  // namespace swale
