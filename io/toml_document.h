#pragma once

#include "io/toml_node.h"

#include <string>

namespace swale {

/// The text of an input file as TOML; `file` is its name in messages. Throws InputErrors if it is none.
TomlNode read_document(const std::string& text, const std::string& file);

}  // namespace swale
