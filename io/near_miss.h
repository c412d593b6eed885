#pragma once

#include <string>
#include <vector>

namespace swale {

/// The candidate that `word` was probably meant to be (few letters added, dropped, replaced or swapped); empty if none is near.
std::string near_miss(const std::string& word, const std::vector<std::string>& candidates);

/// "a, b or c", each in quotes if wanted.
std::string listed(const std::vector<std::string>& words, bool quoted);

}  // namespace swale
