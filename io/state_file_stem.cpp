#include "io/state_file_stem.h"

#include <fmt/format.h>

namespace swale {

std::string state_file_stem(size_t number, const std::string& name) {
    std::string stem = fmt::format("state-{}-", number);
    for (const char letter : name.substr(0, 60)) {
        const bool plain =
            (letter >= '0' && letter <= '9') || (letter >= 'A' && letter <= 'Z') || (letter >= 'a' && letter <= 'z');
        if (plain || stem.back() != '-') stem += plain ? letter : '-';
    }
    return stem.back() == '-' ? stem.substr(0, stem.size() - 1) : stem;
}

}  // namespace swale
