#include "io/report/set_places.h"

namespace swale {

std::vector<SetPlace> set_places(const StateResult& state) {
    std::vector<SetPlace> places;
    for (const CrossSection& section : state.across)
        if (!section.points.empty() && section.name != "mid-transition")
            places.push_back({section.name, section.points.front().x});
    return places;
}

}  // namespace swale
