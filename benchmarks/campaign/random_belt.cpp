#include "benchmarks/campaign/random_belt.h"

#include "materials/catalogue.h"
#include "materials/data_sheet.h"
#include "materials/steel_cord.h"

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <stdexcept>

namespace swale::benchmark {

namespace {

const Origin drawn{"given", "drawn at random"};

const BeltFamily& family(const std::string& code) {
    const auto& all = belt_families();
    const auto found = std::find_if(all.begin(), all.end(), [&](const BeltFamily& one) { return one.code == code; });
    if (found == all.end()) throw std::logic_error("no family " + code);
    return *found;
}

// Strengths that are sold for a width [N/mm]: common practice.
std::pair<int, int> strengths(const std::string& code, double width) {
    if (code == "EP")
        return width <= 650    ? std::pair(200, 630)
               : width <= 1000 ? std::pair(250, 1250)
               : width <= 1400 ? std::pair(400, 2000)
                               : std::pair(630, 3150);
    return width <= 800    ? std::pair(800, 2000)
           : width <= 1200 ? std::pair(800, 3150)
           : width <= 1600 ? std::pair(1000, 4500)
                           : std::pair(1000, 7000);
}

CarcassCode random_carcass(Draw& draw, const std::string& code, double width) {
    const auto [weakest, strongest] = strengths(code, width);
    std::vector<CarcassCode> suited;
    for (const CarcassCode& carcass : family(code).carcasses) {
        // Types of the one table: a seed goes on giving the case that it gave before others came.
        if (code == "ST" && !cord_layer(carcass.strength).of_one_table) continue;
        if (carcass.strength >= weakest && carcass.strength <= strongest) suited.push_back(carcass);
    }
    return draw.one_of(suited);
}

Belt from_catalogue(Draw& draw, const std::string& code, double width) {
    const bool cords = code == "ST";
    Designation designation;
    designation.carcass = random_carcass(draw, code, width);
    designation.top_cover =
        draw.one_of<double>(cords ? std::vector<double>{4, 5, 6, 8, 10, 12} : std::vector<double>{3, 4, 5, 6, 8, 10, 12});
    designation.bottom_cover =
        draw.one_of<double>(cords ? std::vector<double>{4, 5, 6, 8} : std::vector<double>{1.5, 2, 3, 4, 5, 6, 8});
    designation.bottom_cover = std::min(designation.bottom_cover, designation.top_cover);
    return belt_from_designation(to_string(designation), width);
}

// Thickness to D as a fabric belt's, both scattered; Huber's twist.
DataSheet own_sheet(Draw& draw) {
    const double thickness = rounded(draw.log_uniform(4, 24), 0.1);
    const double across = three_digits(std::clamp(std::pow(thickness / 4, 2.5) * draw.log_uniform(0.5, 2), 1.0, 100.0) * 1e3);
    const double along = three_digits(across * draw.uniform(1, 3));
    const double A11 = three_digits(draw.log_uniform(600, 12000)), A22 = three_digits(A11 * draw.uniform(0.1, 0.5));
    const double mass = rounded(std::clamp(thickness * draw.uniform(1.0, 2.6), 5.0, 60.0), 0.1);
    return {datum("A11", A11, drawn),
            datum("A22", A22, drawn),
            datum("A12", three_digits(0.3 * A22), drawn),
            datum("A66", three_digits(A11 * draw.log_uniform(0.01, 0.1)), drawn),
            datum("D11", along, drawn),
            datum("D22", across, drawn),
            datum("D12", three_digits(0.3 * across), drawn),
            datum("D66", three_digits((std::sqrt(along * across) - 0.3 * across) / 2), drawn),
            datum("thickness", thickness, drawn),
            datum("underside", thickness / 2, drawn),
            datum("mass", mass * 1e-9, drawn),
            datum("foundation", three_digits(draw.log_uniform(1, 5)), drawn),
            datum("rated_tension", three_digits(A11 / 100), drawn)};
}

Belt own_section(Draw& draw, double width) {
    Belt belt;
    belt.carcass = Carcass::textile;
    belt.width = width;
    belt.data = own_sheet(draw);
    belt.section = section_of(belt.data);
    belt.rated_tension = internal_value(belt.data, "rated_tension");
    return belt;
}

}  // namespace

Belt random_belt(Draw& draw, double width) {
    const double kind = draw.uniform(0, 1);
    if (kind < 0.25) return own_section(draw, width);
    return from_catalogue(draw, width >= 800 && kind > 0.65 ? "ST" : "EP", width);
}

}  // namespace swale::benchmark
