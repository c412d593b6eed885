#include "benchmarks/campaign/kinds.h"

#include <array>
#include <span>
#include <utility>

namespace swale::benchmark {

namespace {

using Phrase = std::pair<const char*, const char*>;  // what a sentence contains, what it then is

constexpr std::array<Phrase, 10> notes{{{"sags by some", "sag"},
                                        {"discretisation error", "accuracy not reached"},
                                        {"not stable against tipping", "trough tips"},
                                        {"another equilibrium", "another equilibrium"},
                                        {"lowest symmetric eigenvalue", "unstable symmetric"},
                                        {"lowest antisymmetric eigenvalue", "unstable antisymmetric"},
                                        {"was not found out", "stability not found"},
                                        {"lies in no roll", "last set empty"},
                                        {"longer trough did not converge", "no far-end error"},
                                        {"sets = auto", "trough cut short"}}};

constexpr std::array<Phrase, 6> causes{{{"no step lowers the energy", "no step lowers the energy"},
                                        {"no shift made", "no shift made the tangent definite"},
                                        {"behind the axis", "behind a roll"},
                                        {"inside", "inside a roll"},
                                        {"misses its mid-span", "far plane misses its mid-span"},
                                        {"iterations", "iterations used up"}}};

std::string kind_of(const std::string& sentence, std::span<const Phrase> phrases) {
    for (const auto& [phrase, kind] : phrases)
        if (sentence.find(phrase) != std::string::npos) return kind;
    return "other: " + sentence.substr(0, 40);
}

}  // namespace

std::string kind_of_note(const std::string& note) {
    return kind_of(note, notes);
}

std::string kind_of_reason(const std::string& reason) {
    if (reason.empty()) return "no reason given";
    return reason.substr(0, reason.find(',')) + ": " + kind_of(reason, causes);
}

}  // namespace swale::benchmark
