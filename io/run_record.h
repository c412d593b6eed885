#pragma once

#include "io/belt_catalogue.h"
#include "solver/transition_case.h"
#include "solver/transition_result.h"

#include <optional>
#include <string>

namespace swale {

/// One run of `solve`: what was asked, what came out, and the text it was asked in. All outputs are written from this.
struct RunRecord {
    TransitionCase transition;
    TransitionResult result;
    std::string case_text;                        ///< the case file verbatim
    std::string case_file;                        ///< its name as given on the command line
    std::optional<CatalogueFile> catalogue = {};  ///< of belts, if the case names one, verbatim
};

}  // namespace swale
