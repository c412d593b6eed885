#pragma once

#include "io/toml_node.h"

#include <string>
#include <vector>

namespace swale {

/// A value to be put at a key of a case file: "trough.angle", "tension[1].total", "transition.idlers".
struct CaseSetting {
    std::string key;
    TomlNode value;
};

/// Puts the value at its key; tables on the way are made where they are missing. Array items count from 1 and must be there.
/// Throws std::invalid_argument with a sentence where the key can't be one.
void set_value(TomlNode& document, const CaseSetting& setting);

/// The case with all settings put in, as text. Texts like "2.4 widths" (of the belt), "0.5 depths" (of the trough) and
/// "0.6 rated" (the belt's working tension over its width) become quantities of that case: "2880 mm", "46000 N". Where the belt
/// or the trough can't be read they stay, for the case file's reader to complain of.
/// `case_file`: beside which a catalogue of belts is looked for.
std::string variant_text(const TomlNode& base, const std::vector<CaseSetting>& settings, const std::string& case_file);

}  // namespace swale
