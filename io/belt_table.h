#pragma once

#include "io/belt_catalogue.h"
#include "io/case_table.h"
#include "materials/belt.h"

#include <optional>
#include <string>
#include <vector>

namespace swale {

/// Where the catalogue that a case names is to be found: in `stored`, or in a file beside the case.
struct CatalogueSource {
    std::string case_file;
    std::optional<std::string> stored;
};

/// Reads [belt] with either a designation or [belt.section]. A designation is looked up in the user's catalogue first. What was
/// measured overrides what a catalogue assumes.
Belt read_belt(CaseTable table, const CatalogueSource& source);

/// The belt of swale's own catalogue whose designation stands at `key`; one without data if it can't be read.
/// `own`: other designations that would be allowed, for the message.
Belt belt_of_designation(CaseTable& table, const std::string& key, double width, const std::vector<Belt>& own = {});

}  // namespace swale
