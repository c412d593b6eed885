#pragma once

#include <stdexcept>
#include <string>
#include <vector>

namespace swale {

struct TomlEntry;

/// A TOML document as a plain tree in which every value knows its line and how it was written.
struct TomlNode {
    enum class Type { text, integer, real, boolean, date, array, table };

    Type type = Type::table;
    int line = 1;                         ///< of its key or its header
    std::string written = {};             ///< as it stands in the file, cut short when long: for messages
    std::string text = {};                ///< of a text
    double number = 0;                    ///< of an integer or real
    std::vector<TomlEntry> entries = {};  ///< of a table, in the order of the lines
    std::vector<TomlNode> items = {};     ///< of an array
};

struct TomlEntry {
    std::string key;
    TomlNode value;
};

/// The text is not TOML.
class TomlSyntaxError : public std::runtime_error {
  public:
    TomlSyntaxError(const std::string& what, int line_of_error) : std::runtime_error(what), line(line_of_error) {}
    int line;
};

/// The text on one line for messages: control characters escaped, cut short when long.
std::string on_one_line(const std::string& text);

/// Reads a document; throws TomlSyntaxError at its first place that is not TOML, or at a line longer than 2000 bytes.
TomlNode read_toml(const std::string& text);

}  // namespace swale
