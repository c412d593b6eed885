#include "io/near_miss.h"

#include <algorithm>
#include <cctype>
#include <numeric>

namespace swale {
namespace {

char folded(char c) {
    if (c == '-' || c == ' ') return '_';
    return static_cast<char>(std::tolower(static_cast<unsigned char>(c)));
}

/// Levenshtein's distance, row by row; letter case and kind of dash are free.
std::size_t distance(const std::string& a, const std::string& b) {
    std::vector<std::size_t> row(b.size() + 1);
    std::iota(row.begin(), row.end(), std::size_t{0});
    for (std::size_t i = 0; i < a.size(); ++i) {
        std::size_t diagonal = row[0];
        row[0] = i + 1;
        for (std::size_t j = 0; j < b.size(); ++j) {
            const std::size_t replaced = diagonal + (folded(a[i]) == folded(b[j]) ? 0 : 1);
            diagonal = row[j + 1];
            row[j + 1] = std::min({replaced, row[j] + 1, diagonal + 1});
        }
    }
    return row.back();
}

}  // namespace

std::string near_miss(const std::string& word, const std::vector<std::string>& candidates) {
    std::string best;
    std::size_t best_distance = std::min<std::size_t>(3, word.size() / 3 + 1);
    if (word.size() > 40) return best;
    for (const std::string& candidate : candidates) {
        const std::size_t d = distance(word, candidate);
        if (d > best_distance || (d == best_distance && !best.empty())) continue;
        best = candidate;
        best_distance = d;
    }
    return best;
}

std::string listed(const std::vector<std::string>& words, bool quoted) {
    std::string text;
    for (std::size_t i = 0; i < words.size(); ++i) {
        if (i > 0) text += i + 1 == words.size() ? " or " : ", ";
        text += quoted ? "\"" + words[i] + "\"" : words[i];
    }
    return text;
}

}  // namespace swale
