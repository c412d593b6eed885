#pragma once

#include "io/study/case_variant.h"

#include <filesystem>
#include <optional>
#include <string>
#include <vector>

namespace swale {

/// One of the values of an axis: what is shown of it, and what it sets in the case.
struct Choice {
    std::string label;
    std::vector<CaseSetting> settings;
};

/// What is varied along one axis of a study: a list of choices or, in a Latin hypercube, a range of one key.
struct Axis {
    std::string name;
    std::vector<Choice> choices;
    std::string key;           ///< of a range
    double low = 0, high = 0;  ///< of a range, in `unit`
    std::string unit;          ///< "mm", "widths"; empty for plain numbers
    bool is_range = false;
};

/// A plain number or quantity of the axis's unit as a choice of its key.
Choice choice_of(const Axis& axis, double number);

/// A study: a base case and what is varied in it.
struct Study {
    std::string title;
    std::string text;                 ///< the study file verbatim
    std::filesystem::path case_file;  ///< beside the study file
    std::string case_text;            ///< verbatim
    TomlNode base;
    std::vector<Axis> axes;
    int sample = 0;  ///< cases of a Latin hypercube; 0: the full grid of all axes
    int seed = 1;
    bool fields = false;  ///< the belt's surface is kept, state by state
};

/// Reads a study file and its base case, which stands beside it. Throws InputErrors with all mistakes; FileError.
Study read_study(const std::filesystem::path& path);

}  // namespace swale
