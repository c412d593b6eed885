#include "materials/troughability.h"

#include "materials/catalogue.h"
#include "materials/gravity.h"
#include "materials/overrides.h"
#include "tests/materials/message_of.h"
#include "tests/materials/reference_belts.h"
#include "tests/verification/reference_table.h"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>

using namespace swale;

TEST_CASE("the heavy elastica hung at two ends sags as another program computed it") {
    const verification::ReferenceTable table = verification::reference_table("heavy_elastica_two_ends_troughability.csv");
    REQUIRE(table.rows.size() >= 10);
    for (const auto& row : table.rows)
        CHECK(sag_ratio(std::stod(row.at("q L^3/B"))) == doctest::Approx(std::stod(row.at("F/L"))).epsilon(1e-4));
}

TEST_CASE("for little load the sag is 5 G/384") {
    CHECK(sag_ratio(1e-3) == doctest::Approx(5e-3 / 384).epsilon(1e-6));
}

TEST_CASE("sag to load and back over what ISO 703 measures") {
    for (const Troughability& row : troughability_table) {
        CHECK(load_of_sag_ratio(row.sag_ratio) == doctest::Approx(row.load).epsilon(1e-3));
        CHECK(sag_ratio(load_of_sag_ratio(row.sag_ratio)) == doctest::Approx(row.sag_ratio).epsilon(1e-9));
    }
}

TEST_CASE("a worked belt of the trade: EP 630/4, 14.73 kg/m2, 1 m") {
    // F/L 0.14 means 12.1, 0.18 means 8.7 and 0.20 means 7.5 N m.
    CHECK(stiffness_of_troughability(0.14, 1000, 14.73e-9) == doctest::Approx(12.1e3).epsilon(0.005));
    CHECK(stiffness_of_troughability(0.18, 1000, 14.73e-9) == doctest::Approx(8.7e3).epsilon(0.005));
    CHECK(stiffness_of_troughability(0.20, 1000, 14.73e-9) == doctest::Approx(7.5e3).epsilon(0.005));
}

TEST_CASE("a limper strip hangs deeper all the way") {
    double before = 0;
    for (const double load : {5.0, 20.0, 100.0, 300.0, 500.0, 700.0, 1000.0, 2000.0}) {
        CHECK(sag_ratio(load) > before);
        CHECK(sag_ratio(load) < 0.5);
        before = sag_ratio(load);
    }
    CHECK(sag_ratio(load_of_sag_ratio(0.44)) == doctest::Approx(0.44).epsilon(1e-9));
}

TEST_CASE("no belt hangs deeper than its half") {
    for (const double ratio : {0.0, -0.1, 0.45, 0.6, std::nan("")})
        CHECK_THROWS_AS(load_of_sag_ratio(ratio), std::invalid_argument);
}

TEST_CASE("a measured troughability gives D22 at the belt's own width and mass, and can be read back") {
    Belt belt = belt_from_designation("EP 630/4 5+2", 1000);
    const Section before = belt.section;
    override_mass(belt, 14.73e-9);
    override_troughability(belt, 0.18, belt.width);
    CHECK(belt.section.bending(1, 1) == doctest::Approx(8.7e3).epsilon(0.005));
    CHECK(troughability_of_stiffness(belt.section.bending(1, 1), 1000, 14.73e-9) == doctest::Approx(0.18).epsilon(1e-9));
    CHECK(belt.section.bending(0, 0) == before.bending(0, 0));
    const auto coupling = [](const Eigen::Matrix3d& D) { return D(0, 1) / std::sqrt(D(0, 0) * D(1, 1)); };
    CHECK(coupling(belt.section.bending) == doctest::Approx(coupling(before.bending)));
    CHECK(why_not_positive_definite(belt.section.bending, "D").empty());
    CHECK(belt.warnings.empty());
    const auto entry = std::find_if(belt.data.begin(), belt.data.end(), [](const BeltDatum& d) { return d.name == "D22"; });
    CHECK(entry->origin.grade == "given");
}

TEST_CASE("a troughability that the construction contradicts is taken with a warning that says why") {
    Belt limp = belt_from_designation("EP 800/4 6+3", 1200), stiff = belt_from_designation("EP 315/2 3+1.5", 2000);
    override_troughability(limp, 0.435, limp.width);
    REQUIRE(limp.warnings.size() == 1);
    CHECK(limp.warnings.front().find("less than half of what rubber alone") != std::string::npos);
    override_troughability(stiff, 0.01, stiff.width);
    REQUIRE(stiff.warnings.size() == 1);
    CHECK(stiff.warnings.front().find("can't slide") != std::string::npos);
}
