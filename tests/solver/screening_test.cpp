#include "solver/screening.h"

#include "materials/allowables.h"
#include "solver/screening/straight_strips.h"
#include "tests/verification/reference_table.h"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <numbers>

using namespace swale;
using verification::ReferenceTable;

namespace {

const std::string data_folder = std::string(SWALE_SOURCE_DIR) + "/tests/solver/data/";

double radians(double degrees) {
    return degrees * std::numbers::pi / 180;
}

// 1000 mm with wings of 305 mm.
TransitionCase textile_case(double angle, double lift, double per_width) {
    TransitionCase transition;
    transition.belt.width = transition.layout.belt_width = 1000;
    transition.belt.carcass = Carcass::textile;
    transition.belt.rated_tension = 100;
    transition.belt.section.membrane = orthotropic(10000, 3000, 0, 500);
    transition.layout.trough.angle = radians(angle);
    transition.layout.trough.centre_roll = transition.layout.trough.wing_roll = 380;
    transition.layout.trough.roll_gap = 10;
    transition.layout.pulley.lift = lift;
    transition.layout.distance = 2000;
    transition.states = {{"running", per_width * 1000, {}}};
    transition.limits.edge_tension = Limit{1.15, false, "test"};
    return transition;
}

const HandMethod& named(const Screening& screening, const std::string& name) {
    for (const HandMethod& method : screening.methods)
        if (method.name == name) return method;
    throw std::out_of_range(name);
}

double distance(const TransitionCase& transition, const std::string& name) {
    const Screening screening = screen(transition);
    const HandMethod& method = named(screening, name);
    REQUIRE_MESSAGE(method.minimum_distance, method.remark);
    return *method.minimum_distance;
}

}  // namespace

TEST_CASE("straight strips have the excess of plane geometry at every angle and lift") {
    const ReferenceTable table = verification::reference_table_at(data_folder + "straight_strips.csv");
    REQUIRE(table.rows.size() == 6);
    for (const auto& row : table.rows) {
        const double angle = radians(std::stod(row.at("angle_deg"))), depth = std::sin(angle);
        const auto raised = [&](double share) { return StraightStrips{3, 1, angle, share * depth}; };
        const auto is = [&](double ours, const char* column, double tolerance) {
            CHECK_MESSAGE(std::abs(ours - std::stod(row.at(column))) <= tolerance, column, " ", ours, " ", row.at(column));
        };
        is(raised(0).edge(), "full: (eps_edge-eps_centre) L2/F2", 6e-6);
        is(raised(0.5).edge(), "half: (eps_edge-eps_centre) L2/F2", 6e-6);
        is(-raised(0.5).lowest(), "half: (eps_centre-eps_min) L2/F2", 6e-6);
        is(raised(1.0 / 3).edge(), "third: edge-centre", 6e-6);
        is(-raised(1.0 / 3).lowest(), "third: centre-min", 6e-6);
        is(raised(0).neutral_lift() / depth, "equal edge/centre pulley lift / trough depth", 6e-5);
    }
}

TEST_CASE("the mean of straight strips balances their forces") {
    const StraightStrips strips{1000, 305, radians(35), 80};
    double sum = 0;
    constexpr int pieces = 20000;
    for (int k = 0; k < pieces; ++k) sum += strips.excess(305 * (k + 0.5) / pieces) * 305 / pieces;
    CHECK(2 * sum / 1000 == doctest::Approx(strips.mean()).epsilon(1e-7));
}

TEST_CASE("strips of two rolls are those of wings as wide as half the belt") {
    TransitionCase transition = textile_case(20, 0, 50);
    transition.layout.trough.rolls = 2;
    const StraightStrips strips = straight_strips(transition.layout);
    // F = W/2: the edge has F^2 (1 - cos a) more than the centre line, the mean a third of that.
    CHECK(strips.edge() == doctest::Approx(500.0 * 500 * (1 - std::cos(radians(20)))).epsilon(1e-12));
    CHECK(strips.mean() == doctest::Approx(strips.edge() / 3).epsilon(1e-12));
}

TEST_CASE("strips of five rolls are half the square of how far each is out of the flat belt") {
    TransitionCase transition = textile_case(55, 0, 50);
    Trough& trough = transition.layout.trough;
    trough.rolls = 5;
    trough.centre_roll = trough.inner_roll = 200;
    trough.inner_angle = radians(25);
    for (const double lift : {0.0, 120.0}) {
        transition.layout.pulley.lift = lift;
        const StraightStrips strips = straight_strips(transition.layout);
        double lowest = 0, sum = 0;
        constexpr int pieces = 20000;
        for (int k = 0; k < pieces; ++k) {
            const double y = 395 * (k + 0.5) / pieces, inner = std::min(y, 210.0), outer = y - inner;
            const Eigen::Vector2d place(inner * std::cos(radians(25)) + outer * std::cos(radians(55)),
                                        inner * std::sin(radians(25)) + outer * std::sin(radians(55)));
            const double excess = ((place - Eigen::Vector2d(y, lift)).squaredNorm() - lift * lift) / 2;
            lowest = std::min(lowest, excess);
            sum += excess * 395 / pieces;
            if (k % 1000 == 0) CHECK(strips.excess(y) == doctest::Approx(excess).epsilon(1e-9));
        }
        CHECK(strips.mean() == doctest::Approx(2 * sum / 1000).epsilon(1e-6));
        CHECK(strips.lowest() == doctest::Approx(lowest).epsilon(1e-6));
    }
    transition.layout.pulley.lift = straight_strips(transition.layout).neutral_lift();
    CHECK(std::abs(straight_strips(transition.layout).edge()) < 1e-6);
}

TEST_CASE("five rolls with both wings at one angle have the strips of three with one long wing") {
    TransitionCase three = textile_case(35, 40, 50), five = three;
    Trough& trough = five.layout.trough;
    trough.rolls = 5;
    trough.inner_angle = trough.angle;
    trough.inner_roll = 150;
    const StraightStrips one = straight_strips(three.layout), both = straight_strips(five.layout);
    CHECK(both.edge() == doctest::Approx(one.edge()).epsilon(1e-9));
    CHECK(both.lowest() == doctest::Approx(one.lowest()).epsilon(1e-9));
    CHECK(both.mean() == doctest::Approx(one.mean()).epsilon(1e-9));
    CHECK(five.layout.trough_depth() == doctest::Approx(three.layout.trough_depth()).epsilon(1e-12));
}

TEST_CASE("a method that is not one of such sets says so") {
    const auto refuses = [](int rolls, const char* name) {
        TransitionCase transition = textile_case(20, 0, 50);
        transition.layout.trough.rolls = rolls;
        const HandMethod method = named(screen(transition), name);
        return !method.minimum_distance && !method.edge_strain && method.remark.starts_with("not for this set");
    };
    for (const char* name : {"ISO 5293", "handbook multiple", "belt widths of practice"}) {
        CHECK(refuses(2, name));
        CHECK(!refuses(3, name));
        CHECK(refuses(5, name));
    }
    for (const char* name : {"DIN 22101 base length", "straight strips, linear wings"}) {
        CHECK(!refuses(2, name));
        CHECK(refuses(5, name));
    }
    CHECK(!refuses(5, "straight strips"));
}

TEST_CASE("every row of the handbook's tables") {
    const ReferenceTable table = verification::reference_table_at(data_folder + "handbook_multiples.csv");
    CHECK(table.rows.size() >= 80);
    for (const auto& row : table.rows) {
        const std::string& band = row.at("percent_of_rated");
        const double per_width = band == ">90" ? 95 : band == "60-90" ? 75 : 40;
        TransitionCase transition = textile_case(std::stod(row.at("angle_deg")), 0, per_width);
        if (row.at("carcass") == "steel cord") transition.belt.carcass = Carcass::steel_cord;
        if (row.at("pulley") == "half") transition.layout.pulley.lift = transition.layout.trough_depth() / 2;
        const double ours = distance(transition, "handbook multiple") / 1000, theirs = std::stod(row.at("multiple"));
        // The trade's sheet and the belt maker round two half-trough rows down by 0.1; one printed number is not followed.
        const bool misprint = row.at("carcass") == "steel cord" && row.at("angle_deg") == "20" && theirs == 2.8;
        CHECK_MESSAGE(std::abs(ours - theirs) < (misprint ? 0.81 : 0.11), row.at("source"), ": ", theirs, " ours ", ours);
    }
}

TEST_CASE("a published comparison of hand methods on a steel-cord belt of 1600 mm") {
    // Lemmon 2013, Beltcon 17, B17-02, Table 3: at 13.0 m under 600 kN edge 432, centre 350 N/mm by ISO 5293 and DIN 22101,
    // required 13.1 m for an edge of 115 %. Belt and angle inferred (ST 2500, M = 72 x 2500, rated 375 N/mm, 45 deg, 600 mm
    // rolls).
    TransitionCase transition = textile_case(45, 0, 1);
    transition.belt.carcass = Carcass::steel_cord;
    transition.belt.width = transition.layout.belt_width = 1600;
    transition.belt.rated_tension = 375;
    transition.belt.section.membrane = orthotropic(180000, 100, 0, 30);
    transition.layout.trough.centre_roll = transition.layout.trough.wing_roll = 600;
    transition.layout.distance = 13000;
    transition.states = {{"full", 600e3, {}}};
    const Screening screening = screen(transition);
    const HandMethod& linear = named(screening, "straight strips, linear wings");
    CHECK(180000 * *linear.edge_strain == doctest::Approx(432).epsilon(0.01));
    CHECK(180000 * *linear.centre_strain == doctest::Approx(350).epsilon(0.01));
    // 13.1 m is printed; 495 mm of wing gives 12.65: the study's wing is 3 % wider or its modulus 7 % higher.
    CHECK(*linear.minimum_distance == doctest::Approx(13100).epsilon(0.04));
    CHECK(distance(transition, "handbook multiple") == doctest::Approx(12800).epsilon(1e-9));
}

TEST_CASE("worked lengths of the formula of ISO 5293") {
    // ../facts of the trade, derived: 1000 mm, wing 305 mm, M = 10 K = 10000 N/mm: 2.90 m for dT = 20 N/mm.
    const double L = 305 * std::sqrt(10000 * (1 - std::cos(radians(35))) / 20);
    CHECK(L == doctest::Approx(2900).epsilon(2e-3));
    // A single state in which the centre's condition binds: mean over the wings is dT F/W = T, so dT = T W/F.
    const TransitionCase low = textile_case(35, 0, 6.1);
    CHECK(distance(low, "ISO 5293") == doctest::Approx(L).epsilon(1e-6));
}

TEST_CASE("a pulley raised by half the depth halves the length of ISO 5293") {
    TransitionCase transition = textile_case(35, 0, 50);
    const double flush = distance(transition, "ISO 5293");
    transition.layout.pulley.lift = 305 * std::sin(radians(35)) / 2;
    CHECK(distance(transition, "ISO 5293") == doctest::Approx(flush / 2).epsilon(1e-9));
}

TEST_CASE("at the distance that straight strips ask for the limit is just met") {
    TransitionCase transition = textile_case(35, 30, 80);
    transition.layout.distance = distance(transition, "straight strips");
    const Screening screening = screen(transition);
    const double modulus = 10000;
    CHECK(modulus * *named(screening, "straight strips").edge_strain == doctest::Approx(115).epsilon(1e-9));
}

TEST_CASE("a method that lacks what it needs says so") {
    TransitionCase transition = textile_case(35, 0, 50);
    transition.belt.rated_tension.reset();
    transition.belt.carcass.reset();
    const Screening screening = screen(transition);
    for (const char* name : {"ISO 5293", "DIN 22101 base length", "straight strips", "handbook multiple"}) {
        CHECK(!named(screening, name).minimum_distance);
        CHECK(named(screening, name).remark.find("needs") != std::string::npos);
    }
    CHECK(named(screening, "straight strips").edge_strain);
}

TEST_CASE("a mean tension above what the edge may bear leaves no distance") {
    const TransitionCase transition = textile_case(35, 0, 120);
    const Screening screening = screen(transition);
    CHECK(!named(screening, "straight strips").minimum_distance);
    CHECK(named(screening, "straight strips").remark.find("running") != std::string::npos);
}

TEST_CASE("where shell and strips differ by more than a tenth the reason is given") {
    TransitionCase transition = textile_case(35, 87, 50);
    StateResult state;
    state.name = "running";
    state.status = SolveStatus::converged;
    const HandMethod strips = named(screen(transition), "straight strips");
    state.edge_strain_max.value = *strips.edge_strain * 1.05;
    state.centre_strain_min.value = *strips.centre_strain;
    CHECK(compare(transition, {state}).empty());
    state.edge_strain_max.value = *strips.edge_strain * 1.5;
    REQUIRE(compare(transition, {state}).size() == 1);
    CHECK(compare(transition, {state}).front().find("shear the wings") != std::string::npos);
}

namespace {

bool advises(const TransitionCase& transition, const std::string& phrase) {
    const std::vector<std::string> practice = screen(transition).practice;
    return std::ranges::any_of(practice, [&](const std::string& rule) { return rule.find(phrase) != std::string::npos; });
}

}  // namespace

TEST_CASE("practice names angles and places of the intermediate sets beside the case's own") {
    TransitionCase transition = textile_case(45, 0, 50);
    CHECK(advises(transition, "always stand next to terminal pulleys; here none"));
    CHECK(advises(transition, "before sets of 45 deg stand sets of 20, 35 deg; here none"));
    // Two sets at 0.17 and 0.50 of 2000 mm, from either end.
    CHECK(advises(transition, "340, 1000 mm from the pulley"));
    CHECK(advises(transition, "1000, 1660 mm if from the first full set; here none"));
    transition.layout.stations = {{700, radians(15), {}, Support::rolls}};
    CHECK_FALSE(advises(transition, "always stand next to terminal pulleys"));
    CHECK(advises(transition, "stand sets of 20, 35 deg; here 15 deg"));
    CHECK(advises(transition, "660 mm from the pulley"));  // one set at 0.33
    CHECK(advises(transition, "here 700 mm"));
    // 45 deg 700/2000.
    CHECK(advises(transition, "stand at 15.8 deg there"));
}

TEST_CASE("practice of three rolls is not that of two and nothing is said of 20 deg troughs without intermediate sets") {
    TransitionCase transition = textile_case(20, 0, 50);
    CHECK_FALSE(advises(transition, "intermediate"));
    transition.layout.trough.angle = radians(35);
    CHECK(advises(transition, "before sets of 35 deg stand sets of 20 deg"));
    transition.layout.trough.rolls = 2;
    CHECK_FALSE(advises(transition, "before sets of"));
}

TEST_CASE("practice of the pulley's height and of the loading end") {
    TransitionCase transition = textile_case(35, 90, 50);
    const double depth = 305 * std::sin(radians(35));  // 175 mm: a third to a half is 58 to 87
    CHECK(depth / 3 == doctest::Approx(58.3).epsilon(1e-3));
    CHECK(advises(transition, "58 to 87 mm; here 90 mm"));
    CHECK(advises(transition, "never load on a transition"));
    transition.layout.stations = {{1000, radians(20), {}, Support::rolls}};
    CHECK_FALSE(advises(transition, "level with the pulley's top"));
    transition.layout.pulley.lift = 0;
    CHECK_FALSE(advises(transition, "level with the pulley's top"));
    transition.layout.stations.front().lift = 40;
    CHECK(advises(transition, "level with the pulley's top; here it is 40 mm above"));
    transition.layout.pulley.end = BeltEnd::head;
    CHECK(advises(transition, "at a discharge a third is preferred"));
    CHECK_FALSE(advises(transition, "never load on a transition"));
}
