#pragma once

#include <stdexcept>
#include <string>
#include <vector>

namespace swale {

/// One mistake in an input file, with all that is needed to mend it.
struct InputError {
    std::string file;
    int line = 0;         ///< from 1; 0 if the file as a whole is meant
    std::string key;      ///< full path, "tension[2].total"; empty if the file as a whole is meant
    std::string problem;  ///< what is wrong, in a clause
    std::string given;    ///< as written in the file; empty if nothing was
    std::string allowed;  ///< what would be right

    /// "case.toml:12: belt.width: a bare number has no unit; given 1200; allowed: a length from ..."
    std::string text() const;
    bool operator==(const InputError&) const = default;
};

/// All mistakes of one input file, in the order of its lines. `what()` has one mistake a line. Exit code 2.
class InputErrors : public std::runtime_error {
  public:
    explicit InputErrors(std::vector<InputError> errors);
    const std::vector<InputError>& errors() const { return errors_; }

  private:
    std::vector<InputError> errors_;
};

/// Collects the mistakes of one file while it is read on, each once.
class Mistakes {
  public:
    explicit Mistakes(std::string file);
    void add(int line, const std::string& key, const std::string& problem, const std::string& given,
             const std::string& allowed);
    bool none() const { return errors_.empty(); }
    void throw_if_any() const;

  private:
    std::string file_;
    std::vector<InputError> errors_;
};

}  // namespace swale
