#pragma once

#include "solver/wear_survey.h"

#include <optional>
#include <string>
#include <vector>

namespace swale {

/// Words for marks in the order of the enumeration.
inline std::vector<std::string> mark_words() {
    return {"contact", "none", "unsure"};
}

inline std::optional<Mark> mark_of(const std::string& word) {
    const std::vector<std::string> words = mark_words();
    for (std::size_t k = 0; k < words.size(); ++k)
        if (words[k] == word) return static_cast<Mark>(k);
    return std::nullopt;
}

}  // namespace swale
