#include "tests/io/bad_case.h"

#include "io/case_file.h"

#include <doctest/doctest.h>

#include <sstream>

namespace swale {

const std::string sound_case = R"(title = "Salt reclaim, tail transition"
[belt]
width = "1200 mm"
designation = "EP 800/4 6+3"
[[tension]]
name = "running full"
total = "45 kN"
[[tension]]
name = "starting"
total = "62 kN"
[pulley]
end = "tail"
diameter = "630 mm"
lift = "0 mm"
[trough]
angle = "35 deg"
[transition]
distance = "2400 mm"
[[transition.idlers]]
at = "1200 mm"
angle = "20 deg"
[limits]
edge_tension = 1.15
[solve]
accuracy = "2 %"
)";

const std::vector<BadCase> bad_cases = {
    // keys and tables
    {1, "titel = \"Tail\"", 1, "titel", "did you mean title?"},
    {3, "width = \"1200 mm\"\ncolour = \"black\"", 4, "belt.colour", "unknown key"},
    {3, "width = \"1200 mm\"\nDesignation = \"EP\"", 4, "belt.Designation", "did you mean designation?"},
    {14, "lfit = \"0 mm\"", 14, "pulley.lfit", "did you mean lift?"},
    {16, "angle = \"35 deg\"\nroll-gap = \"10 mm\"", 17, "trough.roll-gap", "did you mean roll_gap?"},
    {21, "angle = \"20 deg\"\nsets = 2", 22, "transition.idlers[1].sets", "unknown key"},
    {25, "[weather]\nwind = 3", 25, "weather", "unknown key"},
    {25, "\"a\\nb\" = 1", 25, "solve.a\\u000Ab", "unknown key"},
    {3, "", 2, "belt.width", "missing"},
    {4, "", 2, "belt.designation", "missing"},
    {6, "", 5, "tension[1].name", "missing"},
    {10, "", 8, "tension[2].total", "missing"},
    {12, "", 11, "pulley.end", "missing"},
    {13, "", 11, "pulley.diameter", "missing"},
    {16, "", 15, "trough.angle", "missing"},
    {18, "", 17, "transition.distance", "missing"},
    {20, "", 19, "transition.idlers[1].at", "missing"},
    {21, "", 19, "transition.idlers[1].angle", "missing"},
    {22, "[[limits]]", 22, "limits", "a table [limits]"},
    {24, "[[solve]]", 24, "solve", "a table [solve]"},
    // types
    {1, "title = 5", 1, "title", "wrong type"},
    {1, "title = \"\"", 1, "title", "empty"},
    {1, "title = \"two\\nlines\"", 1, "title", "no single line"},
    {3, "width = 1200", 3, "belt.width", "a bare number where a quantity"},
    {3, "width = 1200.5", 3, "belt.width", "given 1200.5"},
    {3, "width = true", 3, "belt.width", "wrong type; given true"},
    {3, "width = [1200]", 3, "belt.width", "wrong type; given an array"},
    {3, "width = 1979-05-27", 3, "belt.width", "wrong type; given a date"},
    {4, "designation = 800", 4, "belt.designation", "wrong type"},
    {12, "end = 1", 12, "pulley.end", "\"tail\" or \"head\""},
    {12, "end = \"drive\"", 12, "pulley.end", "unknown word; given \"drive\""},
    {16, "angle = \"35 deg\"\nsets = 2.5", 17, "trough.sets", "wrong type"},
    {16, "angle = \"35 deg\"\nsets = \"many\"", 17, "trough.sets", "\"auto\""},
    {16, "angle = \"35 deg\"\nrolls = \"3\"", 17, "trough.rolls", "wrong type"},
    {16, "angle = \"35 deg\"\nsupport = \"glued\"", 17, "trough.support", "\"rolls\" or \"held\""},
    {23, "edge_tension = \"1.15\"", 23, "limits.edge_tension", "\"ISO 5293\" or a plain number from 0.01 to 10"},
    {23, "edge_tension = true", 23, "limits.edge_tension", "wrong type"},
    {23, "edge_tension = 11", 23, "limits.edge_tension", "a plain number from 0.01 to 10"},
    {23, "edge_tension = nan", 23, "limits.edge_tension", "out of range"},
    {23, "edge_strain = 0.008", 23, "limits.edge_strain", "a bare number where a quantity"},
    {10, "total = \"62 kN\"\nlimits = 1.5", 11, "tension[2].limits", "a table [tension[2].limits]"},
    {10, "total = \"62 kN\"\nlimits = { edge_tension = \"150 %\" }", 11, "tension[2].limits.edge_tension", "unknown word"},
    {10, "total = \"62 kN\"\n[tension.limits]\nedge_strain = 0.01", 12, "tension[2].limits.edge_strain", "a bare number"},
    {10, "total = \"62 kN\"\nlimits = { edge_tensoin = 1.5 }", 11, "tension[2].limits.edge_tensoin",
     "did you mean edge_tension"},
    {23, "roll_force = \"4 kg\"", 23, "limits.roll_force", "not the unit of a force"},
    {23, "roll_force = \"0 kN\"", 23, "limits.roll_force", "from 0.001 kN to 1000 kN"},
    {25, "model = \"quarter\"", 25, "solve.model", "\"half\" or \"full\""},
    {25, "newton_iterations = 20.5", 25, "solve.newton_iterations", "whole number"},
    // kinds
    {3, "width = \"1200\"", 3, "belt.width", "no unit"},
    {3, "width = \"1200 kg\"", 3, "belt.width", "not the unit of a length"},
    {3, "width = \"2 3 mm\"", 3, "belt.width", "allowed: a length from 100 mm to 5000 mm"},
    {7, "total = \"45 kN @ 3\"", 7, "tension[1].total", "given \"45 kN @ 3\""},
    {7, "total = \"45 mm\"", 7, "tension[1].total", "not the unit of a force"},
    {16, "angle = \"35 %\"", 16, "trough.angle", "not the unit of an angle"},
    {23, "edge_strain = \"0.8 deg\"", 23, "limits.edge_strain", "not the unit of a percentage"},
    {23, "tension_min = \"0 kg/s^2\"", 23, "limits.tension_min", "no place here"},
    {25, "accuracy = \"2\"", 25, "solve.accuracy", "no unit"},
    // ranges
    {3, "width = \"12 mm\"", 3, "belt.width", "out of range"},
    {3, "width = \"-1200 mm\"", 3, "belt.width", "out of range"},
    {3, "width = \"nan mm\"", 3, "belt.width", "not a finite decimal number"},
    {7, "total = \"0 kN\"", 7, "tension[1].total", "out of range"},
    {7, "total = \"-45 kN\"", 7, "tension[1].total", "out of range"},
    {14, "run_on = \"steady\"", 14, "pulley.run_on", "runs off a tail pulley"},
    {12, "end = \"head\"\ngrip = \"sliding\"\nrun_on = \"steady\"", 14, "pulley.run_on", "no line at which it sticks"},
    {14, "run_on = \"warped\"", 14, "pulley.run_on", "\"plane\" or \"steady\""},
    {13, "diameter = \"6.3 mm\"", 13, "pulley.diameter", "from 50 mm to 5000 mm"},
    {14, "lift = \"9 m\"", 14, "pulley.lift", "out of range; given \"9 m\""},
    {16, "angle = \"80 deg\"", 16, "trough.angle", "from 0 deg to 60 deg"},
    {16, "angle = \"35 rad\"", 16, "trough.angle", "out of range"},
    {16, "angle = \"35 deg\"\nrolls = 4", 17, "trough.rolls", "2, 3 or 5"},
    {16, "angle = \"35 deg\"\nrolls = 6", 17, "trough.rolls", "from 2 to 5"},
    {16, "angle = \"35 deg\"\nwing_tilt = \"12 deg\"", 17, "trough.wing_tilt", "from 0 deg to 10 deg"},
    {16, "angle = \"35 deg\"\nwing_tilt = \"-2 deg\"", 17, "trough.wing_tilt", "out of range"},
    {16, "angle = \"35 deg\"\ncentre_offset = \"2 m\"", 17, "trough.centre_offset", "out of range"},
    {16, "angle = \"35 deg\"\nsets = 0", 17, "trough.sets", "from 1 to 200"},
    {16, "angle = \"35 deg\"\nspacing = \"12 mm\"", 17, "trough.spacing", "out of range"},
    {18, "distance = \"240 m\"", 18, "transition.distance", "out of range"},
    {25, "grid = 0", 25, "solve.grid", "from 0.25 to 4"},
    {25, "accuracy = \"0 %\"", 25, "solve.accuracy", "out of range"},
    {25, "newton_iterations = 99999999999", 25, "solve.newton_iterations", "out of range"},
    // the load
    {22, "[load]\nsurcharge = \"20 deg\"\n[limits]", 22, "load.density", "missing"},
    {22, "[load]\ndensity = \"1.2 t/m^3\"\n[limits]", 22, "load.surcharge", "missing"},
    {22, "[load]\ndensity = \"-1 t/m^3\"\nsurcharge = \"20 deg\"\n[limits]", 23, "load.density", "out of range"},
    {22, "[load]\ndensity = \"1200 kg/m^2\"\nsurcharge = \"20 deg\"\n[limits]", 23, "load.density",
     "not the unit of a density"},
    {22, "[load]\ndensity = \"1.2 t/m^3\"\nsurcharge = \"70 deg\"\n[limits]", 24, "load.surcharge", "out of range"},
    {22, "[load]\ndensity = \"1.2 t/m^3\"\nsurcharge = \"20 deg\"\nfill = 80\n[limits]", 25, "load.fill", "from 0.01 to 1.5"},
    {22, "[load]\ndensity = \"1.2 t/m^3\"\nsurcharge = \"20 deg\"\nfill = \"80 %\"\n[limits]", 25, "load.fill", "wrong type"},
    {22, "[load]\ndensity = \"1.2 t/m^3\"\nsurcharge = \"20 deg\"\nfill = 0.8\nfree_edge = \"85 mm\"\n[limits]", 26,
     "load.free_edge", "both fill and free_edge"},
    {22, "[load]\ndensity = \"1.2 t/m^3\"\nsurcharge = \"20 deg\"\nfree_edge = \"600 mm\"\n[limits]", 25, "load.free_edge",
     "leaves nothing"},
    {22, "[load]\ndensity = \"1.2 t/m^3\"\nsurcharge = \"20 deg\"\nfrom = \"5 m\"\n[limits]", 25, "load.from",
     "behind the last full set"},
    {22, "[load]\ndensity = \"1.2 t/m^3\"\nsurcharge = \"20 deg\"\nto = \"5 m\"\n[limits]", 25, "load.to", "unknown key"},
    {10, "total = \"62 kN\"\nloaded = true", 11, "tension[2].loaded", "no load to bear"},
    {10, "total = \"62 kN\"\nloaded = \"yes\"", 11, "tension[2].loaded", "true or false"},
    // what does not go together
    {4, "designation = \"EP 800\"", 4, "belt.designation", "EP 800"},
    {4, "designation = \"rubber\"", 4, "belt.designation", "given \"rubber\""},
    {4, "designation = \"EP 800/4 6+3\"\nmodulus = \"1 N/mm\"", 5, "belt.modulus", "modulus"},
    {4, "designation = \"EP 800/4 6+3\"\ntroughability = 0.5", 5, "belt.troughability", "from 0.01 to 0.44"},
    {4, "designation = \"EP 800/4 6+3\"\ncompressive_stiffness = 0", 5, "belt.compressive_stiffness", "from 0.001 to 1"},
    {4, "designation = \"EP 800/4 6+3\"\ncompressive_stiffness = 1.5", 5, "belt.compressive_stiffness", "from 0.001 to 1"},
    {4, "designation = \"EP 800/4 6+3\"\ncompressive_stiffness = \"10 %\"", 5, "belt.compressive_stiffness", "wrong type"},
    {4, "designation = \"EP 800/4 6+3\"\nthickness = \"5 mm\"", 5, "belt.thickness",
     "the covers of the designation alone have 9 mm"},
    {4, "designation = \"EP 800/4 6+3\"\nmass = \"0 kg/m^2\"", 5, "belt.mass", "out of range"},
    {4, "designation = \"EP 800/4 6+3\"\nelongation_at_reference = 1.5", 5, "belt.elongation_at_reference", "a bare number"},
    {4, "designation = \"EP 800/4 6+3\"\nelongation_at_reference = \"15 %\"", 5, "belt.elongation_at_reference",
     "out of range"},
    {4, "designation = \"EP 800/4 6+3\"\ncatalogue = \"absent.toml\"", 5, "belt.catalogue", "there is no file"},
    {4, "designation = \"EP 800/4 6/3\"", 4, "belt.designation", "joined by '+'"},
    {4, "designation = \"PK 800/4 6+3\"", 4, "belt.designation", "unknown belt family"},
    {4, "designation = \"EP 200/4 6+3\"", 4, "belt.designation", "write 'EP 800/4'"},
    {9, "name = \"running full\"", 9, "tension[2].name", "another state has this name"},
    {10, "elongation = \"6 mm\"", 10, "tension[2].elongation", "held trough only"},
    {16, "angle = \"35 deg\"\ncentre_roll = \"1195 mm\"", 17, "trough.centre_roll", "centre roll alone"},
    {16, "angle = \"35 deg\"\nroll_end_radius = \"50 mm\"\nroll_diameter = \"80 mm\"", 17, "trough.roll_end_radius",
     "larger than the roll"},
    {16, "angle = \"20 deg\"\nrolls = 2", 15, "trough.wing_roll", "missing"},
    {16, "angle = \"20 deg\"\nrolls = 2\nwing_roll = \"700 mm\"\ncentre_roll = \"465 mm\"", 19, "trough.centre_roll",
     "no such roll"},
    {16, "angle = \"20 deg\"\nrolls = 2\nwing_roll = \"700 mm\"\ncentre_offset = \"160 mm\"", 19, "trough.centre_offset",
     "no such roll"},
    {16, "angle = \"35 deg\"\ninner_roll = \"250 mm\"", 17, "trough.inner_roll", "rolls = 5"},
    {16, "angle = \"35 deg\"\ninner_angle = \"20 deg\"", 17, "trough.inner_angle", "rolls = 5"},
    {16, "angle = \"55 deg\"\nrolls = 5\ncentre_roll = \"250 mm\"", 15, "trough.inner_angle", "missing"},
    {16, "angle = \"55 deg\"\nrolls = 5\ninner_angle = \"25 deg\"", 15, "trough.centre_roll", "missing"},
    {16, "angle = \"55 deg\"\nrolls = 5\ncentre_roll = \"250 mm\"\ninner_angle = \"56 deg\"", 19, "trough.inner_angle",
     "steeper than the outer ones"},
    {16, "angle = \"55 deg\"\nrolls = 5\ncentre_roll = \"465 mm\"\ninner_angle = \"25 deg\"", 15, "trough.inner_roll",
     "ends on the inner wings"},
    {16, "angle = \"35 deg\"\nroll_gap = \"-20 mm\"", 17, "trough.roll_gap", "plane of its own"},
    {16, "angle = \"35 deg\"\ncentre_offset = \"550 mm\"", 17, "trough.centre_offset", "nearer to the next set"},
    {21, "angle = \"20 deg\"\ninner_angle = \"10 deg\"", 22, "transition.idlers[1].inner_angle", "five rolls"},
    {16, "angle = \"35 deg\"\nflat_width = \"475 mm\"", 17, "trough.flat_width", "belongs to a held profile"},
    {16, "angle = \"35 deg\"\njunction_radius = \"150 mm\"", 17, "trough.junction_radius", "belongs to a held profile"},
    {3, "width = \"3000 mm\"", 15, "trough.centre_roll", "400 mm to 2400 mm"},
    {20, "at = \"2400 mm\"", 20, "transition.idlers[1].at", "beyond the transition"},
    {20, "at = \"2300 mm\"", 20, "transition.idlers[1].at", "stands in the first full set"},
    {20, "at = \"200 mm\"", 20, "transition.idlers[1].at", "stand in the pulley"},
    {21, "angle = \"20 deg\"\n[[transition.idlers]]\nat = \"800 mm\"\nangle = \"30 deg\"", 23, "transition.idlers[2].at",
     "not in order"},
    {21, "angle = \"20 deg\"\n[[transition.idlers]]\nat = \"1300 mm\"\nangle = \"30 deg\"", 23, "transition.idlers[2].at",
     "stands in the one before"},
    {21, "angle = \"20 deg\"\nsupport = \"held\"", 15, "trough.junction_radius", "missing"},
    // not TOML
    {3, "width = ", 3, "", "not TOML"},
    {3, "width = 1200 mm", 3, "", "not TOML"},
    {3, "width = \"1200 mm\"\nwidth = \"1400 mm\"", 4, "", "not TOML"},
    {11, "[belt]", 11, "", "not TOML"},
    {15, "[trough", 15, "", "not TOML"},
};

const std::string sound_held_case = R"([belt]
width = "1200 mm"
[belt.section]
kind = "steel cord"
thickness = "10 mm"
mass = "0 kg/m^2"
A11 = "8000 N/mm"
A22 = "2500 N/mm"
A12 = "500 N/mm"
A66 = "500 N/mm"
D11 = "70 N m"
D22 = "25 N m"
D12 = "5 N m"
D66 = "8 N m"
[[tension]]
name = "drawn"
elongation = "6 mm"
[pulley]
end = "tail"
diameter = "630 mm"
support = "held"
[trough]
angle = "35 deg"
support = "held"
junction_radius = "150 mm"
[transition]
distance = "2000 mm"
)";

const std::vector<BadCase> bad_held_cases = {
    {4, "kind = \"cotton\"", 4, "belt.section.kind", "\"textile\", \"steel cord\" or \"aramid\""},
    {5, "", 3, "belt.section.thickness", "missing"},
    {6, "", 3, "belt.section.mass", "missing"},
    {6, "mass = \"16 kg\"", 6, "belt.section.mass", "not the unit of a mass per area"},
    {6, "mass = \"-1 kg/m^2\"", 6, "belt.section.mass", "out of range"},
    {7, "", 3, "belt.section.A11", "missing"},
    {7, "A11 = \"-8000 N/mm\"", 7, "belt.section.A11", "out of range"},
    {7, "A11 = \"8000 N\"", 7, "belt.section.A11", "not the unit of a force per length"},
    {9, "A12 = \"4500 N/mm\"", 9, "belt.section.A12", "not positive definite"},
    {11, "D11 = \"70 J\"", 11, "belt.section.D11", "no place here"},
    {11, "D11 = \"70 N m/m\"", 11, "belt.section.D11", "not the unit of a moment"},
    {13, "D12 = \"-42 N m\"", 13, "belt.section.D12", "not positive definite"},
    {14, "D66 = \"0 N m\"", 14, "belt.section.D66", "out of range"},
    {5, "thickness = \"10 mm\"\nunderside = \"11 mm\"", 6, "belt.section.underside", "beyond the belt"},
    {5, "thickness = \"10 mm\"\nfoundation = \"2 MPa\"", 6, "belt.section.foundation", "not the unit"},
    {2, "width = \"1200 mm\"\ndesignation = \"EP 800/4 6+3\"", 3, "belt.designation", "both"},
    {2, "width = \"1200 mm\"\nmodulus = \"8000 N/mm\"", 3, "belt.modulus", "A11"},
    {2, "width = \"1200 mm\"\nelongation_at_reference = \"1.5 %\"", 3, "belt.elongation_at_reference", "A11"},
    {17, "elongation = \"6 mm\"\ntotal = \"45 kN\"", 17, "tension[1].elongation", "both total and elongation"},
    {17, "elongation = \"6 m\"", 17, "tension[1].elongation", "out of range"},
    {21, "support = \"held\"\ngrip = \"sliding\"", 22, "pulley.grip", "can't slide"},
    {19, "end = \"head\"\nrun_on = \"steady\"", 20, "pulley.run_on", "a held edge does not move"},
    {24, "support = \"held\"\nsets = 2", 25, "trough.sets", "the belt ends at a held trough"},
    {24, "support = \"held\"\nrolls = 2\nwing_roll = \"700 mm\"", 25, "trough.rolls", "three rolls"},
    {24, "support = \"held\"\nwing_tilt = \"2 deg\"", 25, "trough.wing_tilt", "a held profile has no such rolls"},
    {24, "support = \"held\"\ncentre_offset = \"160 mm\"", 25, "trough.centre_offset", "a held profile has no such rolls"},
    {25, "", 22, "trough.junction_radius", "missing"},
    {26, "[load]\ndensity = \"1.2 t/m^3\"\nsurcharge = \"20 deg\"\n[transition]", 26, "load", "a held trough"},
    {21, "support = \"rolls\"", 3, "belt.section.foundation", "since rolls carry the belt"},
    {27, "distance = \"2000 mm\"\n[[transition.idlers]]\nat = \"1000 mm\"\nangle = \"20 deg\"", 3, "belt.section.foundation",
     "missing"},
    {25, "junction_radius = \"900 mm\"", 25, "trough.junction_radius", "no flat"},
    {25, "junction_radius = \"150 mm\"\nflat_width = \"1100 mm\"", 26, "trough.flat_width", "wider than the belt"},
};

std::string with_line(const std::string& text, int line, const std::string& replacement) {
    std::istringstream in(text);
    std::string result;
    int number = 0;
    for (std::string row; std::getline(in, row);) result += (++number == line ? replacement : row) + "\n";
    return result;
}

std::vector<InputError> mistakes_of(const std::string& text) {
    try {
        parse_case(text, "case.toml");
    } catch (const InputErrors& errors) {
        return errors.errors();
    }
    return {};
}

std::vector<InputError> check_named(const std::string& sound, const BadCase& bad) {
    const std::vector<InputError> mistakes = mistakes_of(with_line(sound, bad.line, bad.text));
    CAPTURE(std::string(bad.text));
    REQUIRE_FALSE(mistakes.empty());
    const std::string text = mistakes.front().text();
    CAPTURE(text);
    CHECK(mistakes.front().line == bad.line_of_mistake);
    CHECK(mistakes.front().key == bad.key);
    CHECK(text.find(bad.phrase) != std::string::npos);
    CHECK(text.find("; allowed: ") != std::string::npos);
    return mistakes;
}

}  // namespace swale
