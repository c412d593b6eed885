#pragma once

#include "io/input_error.h"
#include "io/quantity.h"
#include "io/toml_node.h"

#include <optional>
#include <string>
#include <utility>
#include <vector>

namespace swale {

/// Values allowed for a quantity, in its unit of print; both ends belong to it.
struct Allowed {
    Kind kind;
    double low;
    double high;
};

/// One table of the case file, read key by key. A mistake is noted and reading goes on: a value that can't be read is NaN (all
/// comparisons with it are false, so no second mistake follows from the first); a text is then empty, a choice absent.
/// Every key asked for is a known one; `finish` notes the others.
class CaseTable {
  public:
    /// `path` is the table's name in messages: "belt.section", "tension[2]"; empty for the whole file.
    CaseTable(const TomlNode& node, std::string path, Mistakes& mistakes);

    bool has(const std::string& key);
    std::optional<double> quantity(const std::string& key, const Allowed& allowed);
    double required_quantity(const std::string& key, const Allowed& allowed);
    std::optional<double> number(const std::string& key, double low, double high);
    std::optional<int> integer(const std::string& key, int low, int high);
    std::optional<bool> truth(const std::string& key);
    /// A line of text without control characters, not empty.
    std::optional<std::string> text(const std::string& key);
    std::string required_text(const std::string& key);
    /// One of the words, in the order of an enumeration that starts at 0.
    template <typename Enumeration>
    std::optional<Enumeration> choice(const std::string& key, const std::vector<std::string>& words) {
        const std::optional<int> index = index_of_choice(key, words);
        return index ? std::optional(static_cast<Enumeration>(*index)) : std::nullopt;
    }
    /// The value as it stands, for a key of two types; null if absent.
    const TomlNode* value(const std::string& key);

    /// Sub-table. One that is missing (a mistake if `required`) or no table reads as empty without further mistakes.
    CaseTable table(const std::string& key, bool required);
    /// The tables of an array of tables, [[key]], up to a hundred.
    std::vector<CaseTable> tables(const std::string& key);

    /// Notes a mistake about a key with its line and the value given, or about its absence.
    void reject(const std::string& key, const std::string& problem, const std::string& allowed);
    /// Notes that a key has to be there.
    void reject_missing(const std::string& key, const std::string& allowed);
    /// Notes the keys that nobody asked for, with the nearest known one.
    void finish();

  private:
    std::optional<int> index_of_choice(const std::string& key, const std::vector<std::string>& words);
    std::optional<double> checked_number(const std::string& key, const TomlNode& node, double low, double high, bool whole);
    CaseTable empty(const std::string& key) const;
    std::string path_of(const std::string& key) const;
    void note(int line, const std::string& key, const std::string& problem, const std::string& given,
              const std::string& allowed);

    const TomlNode* node_;  // null: reads as empty, notes nothing
    std::string path_;
    Mistakes* mistakes_;
    std::vector<std::string> known_;
};

}  // namespace swale
