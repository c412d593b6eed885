#include "io/chart/chart_pictures.h"

#include <array>
#include <utility>

namespace swale {

namespace {

using Word = std::pair<const char*, const char*>;

constexpr std::array<Word, 9> names{{{"transition.distance", "distance"},
                                     {"pulley.lift", "pulley lift"},
                                     {"trough.angle", "trough angle"},
                                     {"trough.spacing", "spacing of the sets"},
                                     {"belt.designation", "belt"},
                                     {"belt.width", "belt width"},
                                     {"pulley.diameter", "pulley diameter"},
                                     {"load.fill", "fill"},
                                     {"load.density", "density"}}};
constexpr std::array<Word, 3> units{{{"widths", "belt widths"}, {"depths", "trough depths"}, {"rated", "of the rated one"}}};

template <std::size_t count>
std::string in_print(const std::array<Word, count>& words, const std::string& word) {
    for (const auto& [key, print] : words)
        if (word == key) return print;
    return word;
}

}  // namespace

AxisWords axis_words(const std::string& axis, const std::string& label) {
    const bool tension = axis.starts_with("tension[") && axis.ends_with("].total");
    return {tension ? "belt tension" : in_print(names, axis), in_print(units, label_unit(label))};
}

std::string label_words(const std::string& axis, const std::string& label) {
    const std::string unit = label_unit(label), words = axis_words(axis, label).unit;
    return words == unit ? label : label.substr(0, label.rfind(unit)) + words;
}

}  // namespace swale
