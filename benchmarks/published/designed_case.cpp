#include "benchmarks/published/designed_case.h"

#include "materials/catalogue.h"
#include "materials/data_sheet.h"
#include "mesh/idler_series.h"

#include <cstdio>
#include <numbers>

namespace swale::benchmark {

namespace {

constexpr int sets = 3;  // enough that the peaks are those of the transition

// One line of the list. Lengths over the width, lift over the trough depth, tension over rated.
struct Design {
    const char* belt;  // a designation, or "thin", "soft"
    double width, angle, tension, lift, distance;
    int stations;
    double diameter;
};

// A thin fabric conveyor belt of 5 mm and a soft, thick rubber belt.
Belt own_belt(const std::string& name, double width) {
    Belt belt;
    const bool thin = name == "thin";
    Section& section = belt.section;
    section.membrane = thin ? orthotropic(1800, 500, 150, 60) : orthotropic(2500, 900, 270, 120);
    section.bending = thin ? orthotropic(2.0e3, 1.2e3, 0.36e3, 0.6e3) : orthotropic(45e3, 30e3, 9e3, 14e3);
    section.thickness = thin ? 5 : 18;
    section.underside = section.thickness / 2;
    section.mass = thin ? 6e-9 : 22e-9;
    section.foundation = thin ? 4 : 1.2;
    belt.carcass = Carcass::textile;
    belt.rated_tension = thin ? 16 : 25;
    belt.width = width;
    return belt;
}

Belt belt_of(const Design& design) {
    const std::string name = design.belt;
    if (name == "thin" || name == "soft") return own_belt(name, design.width);
    return belt_from_designation(name, design.width);
}

// Evenly spread over distance and angle.
void add_stations(const Design& design, TransitionLayout& layout) {
    for (int k = 1; k <= design.stations; ++k) {
        const double share = static_cast<double>(k) / (design.stations + 1);
        layout.stations.push_back({share * layout.distance, share * layout.trough.angle, {}, Support::rolls});
    }
}

std::string name_of(const Design& d) {
    char name[160];
    std::snprintf(name, sizeof name, "%s, W %.0f, %.0f deg, %.2f rated, lift %.1f, L %.1f W, %d stations", d.belt, d.width,
                  d.angle, d.tension, d.lift, d.distance, d.stations);
    return name;
}

DesignedCase built(const Design& design) {
    TransitionCase transition;
    transition.title = name_of(design);
    transition.belt = belt_of(design);
    TransitionLayout& layout = transition.layout;
    layout.belt_width = design.width;
    layout.pulley.diameter = design.diameter;
    const double roll = standard_roll_length(design.width).value(), diameter = design.width <= 650    ? 108
                                                                               : design.width <= 1400 ? 133
                                                                                                      : 159;
    layout.trough = {design.angle * std::numbers::pi / 180, roll, roll, 10, 5, diameter, 1200, sets, Support::rolls, {}, 0};
    layout.pulley.lift = design.lift * layout.trough_depth();
    layout.distance = design.distance * design.width;
    add_stations(design, layout);
    transition.states = {{"state", design.tension * transition.belt.rated_tension.value() * design.width, {}}};
    return {name_of(design), transition};
}

// Belt, width mm, angle deg, tension / rated, lift / depth, distance / width, stations, pulley mm.
constexpr Design designs[] = {
    // fabric
    {"EP 800/4 6+3", 1200, 35, 0.47, 0.0, 2.0, 0, 630},
    {"EP 800/4 6+3", 1200, 35, 0.47, 0.5, 2.0, 0, 630},
    {"EP 800/4 6+3", 1200, 35, 0.15, 0.0, 2.0, 0, 630},
    {"EP 800/4 6+3", 1200, 35, 0.15, 0.5, 1.5, 0, 630},
    {"EP 800/4 6+3", 1200, 35, 1.00, 0.0, 1.5, 0, 630},
    {"EP 800/4 6+3", 1200, 35, 0.47, 1.0, 3.0, 0, 630},
    {"EP 800/4 6+3", 1200, 35, 0.05, 0.0, 3.0, 0, 630},
    {"EP 800/4 6+3", 1200, 35, 0.47, 0.0, 1.0, 0, 630},
    {"EP 800/4 6+3", 1200, 35, 0.47, 0.0, 2.0, 1, 630},
    {"EP 800/4 6+3", 1200, 35, 0.25, 0.5, 3.0, 2, 630},
    {"EP 315/3 4+2", 650, 30, 0.40, 0.0, 2.0, 0, 400},
    {"EP 315/3 4+2", 650, 20, 0.10, 0.5, 1.2, 0, 400},
    {"EP 315/2 3+1.5", 500, 45, 0.60, 0.0, 2.5, 0, 315},
    {"EP 250/2 3+1.5", 500, 25, 0.30, 0.0, 1.0, 1, 315},
    {"EP 500/3 5+2", 800, 45, 0.50, 0.5, 2.0, 1, 500},
    {"EP 630/4 6+2", 1000, 20, 0.80, 0.0, 1.0, 0, 630},
    {"EP 1250/5 8+3", 1400, 30, 0.40, 0.3, 2.0, 0, 800},
    {"EP 1600/5 8+4", 1800, 45, 0.50, 0.5, 2.5, 1, 1000},
    {"EP 2000/5 10+4", 2000, 35, 0.60, 0.0, 2.0, 0, 1000},
    {"EP 1000/4 8+3", 1600, 40, 0.10, 0.7, 4.0, 0, 800},
    // steel cord
    {"ST 1600 8+6", 1200, 35, 0.57, 0.0, 4.0, 0, 1000},
    {"ST 1600 8+6", 1200, 35, 0.57, 0.5, 3.0, 0, 1000},
    {"ST 1600 8+6", 1200, 35, 0.20, 0.3, 4.5, 1, 1000},
    {"ST 1000 6+4", 1000, 30, 0.40, 0.0, 2.5, 0, 800},
    {"ST 1000 6+4", 1000, 20, 0.80, 0.5, 2.0, 0, 800},
    {"ST 2500 8+6", 1600, 45, 0.50, 0.5, 4.0, 2, 1250},
    {"ST 3150 10+8", 1800, 35, 0.70, 0.0, 3.0, 0, 1250},
    {"ST 4000 12+8", 2000, 30, 0.30, 0.5, 5.0, 1, 1400},
    {"ST 800 6+4", 800, 45, 0.50, 0.0, 3.0, 1, 630},
    {"ST 2000 8+6", 1400, 25, 0.10, 0.0, 2.0, 0, 1000},
    // thin and soft
    {"thin", 500, 20, 0.50, 0.0, 1.5, 0, 250},
    {"thin", 500, 35, 0.20, 0.5, 2.0, 0, 250},
    {"thin", 650, 30, 0.80, 0.0, 2.0, 1, 250},
    {"thin", 800, 45, 0.50, 0.0, 3.0, 0, 315},
    {"soft", 800, 30, 0.40, 0.0, 2.0, 0, 630},
    {"soft", 1000, 35, 0.20, 0.5, 1.5, 0, 630},
    {"soft", 650, 20, 0.80, 0.0, 1.0, 0, 630},
    {"soft", 1200, 45, 0.60, 0.3, 3.0, 1, 630},
};

}  // namespace

std::vector<DesignedCase> designed_cases() {
    std::vector<DesignedCase> cases;
    for (const Design& design : designs) cases.push_back(built(design));
    return cases;
}

}  // namespace swale::benchmark
