#pragma once

#include "io/terminal/text_table.h"
#include "solver/transition_result.h"

#include <string>
#include <vector>

namespace swale {

/// What becomes of the belt as the tension falls, with a head line; none if no path was asked for.
std::vector<TextRow> tension_path_rows(const TensionPath& path);

/// At which tensions an eigenvalue vanishes, in a sentence.
std::string vanishing_words(const TensionPath& path);

std::string path_section(const TransitionResult& result);

}  // namespace swale
