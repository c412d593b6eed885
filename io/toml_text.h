#pragma once

#include "io/toml_node.h"

#include <string>

namespace swale {

/// A document as TOML text: values before sub-tables, tables under headers, tables inside arrays of values inline. Reads back
/// as the same tree, line numbers apart. A date is written as the text that it was shown as.
std::string toml_text(const TomlNode& document);

/// One value as it stands behind "key = ".
std::string toml_value(const TomlNode& value);

}  // namespace swale
