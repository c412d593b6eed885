#include "materials/catalogue.h"
#include "solver/wear/diagnosis.h"

#include <doctest/doctest.h>

#include <cmath>
#include <functional>

// Surveys of one belt, its shapes solved once.

using namespace swale;

namespace {

WearSurvey empty_survey() {
    WearSurvey survey;
    survey.run = {belt_from_designation("EP 800/4 6+3", 1200).section, 1200, 15e3, 3000, 133, 225};
    survey.roll_length = 1400;
    return survey;
}

const ShapeTable& shapes() {
    static const ShapeTable table = shapes_of(empty_survey());
    return table;
}

using Profile = std::function<double(double y)>;

Profile of_belt(const BeltMemory& memory, double offset) {
    const RollContact contact = contact_on_return_roll(empty_survey().run, memory, {0.7});
    REQUIRE(contact.converged);
    const Exposure exposure(pressure_shape(contact.pressure), 1200, 15);
    return [=](double y) { return exposure.at(y - offset); };
}

SurveyedRoll measured(const std::string& name, const Profile& profile) {
    SurveyedRoll roll{name, {}, {}};
    for (double y = -660; y <= 660; y += 60) roll.depths.push_back({y, 0.4 * profile(y)});
    return roll;
}

SurveyedRoll marked(const std::string& name, const Profile& profile) {
    SurveyedRoll roll{name, {}, {}};
    for (double y = -690; y < 690; y += 60)
        roll.bands.push_back({y, y + 60, profile(y + 30) > 0.25 ? Mark::contact : Mark::none});
    return roll;
}

WearDiagnosis read(std::vector<SurveyedRoll> rolls) {
    WearSurvey survey = empty_survey();
    survey.rolls = std::move(rolls);
    return diagnose(survey, shapes());
}

double fold(double degrees) {
    return degrees * 3.14159265358979323846 / 180;
}

}  // namespace

TEST_CASE("A creased belt is told from its wear and the angle found") {
    const Profile profile = of_belt({0, fold(-12), fold(-12)}, 20);
    for (const WearDiagnosis& diagnosis :
         {read({measured("1", profile)}), read({marked("1", profile), marked("2", profile)})}) {
        CAPTURE(diagnosis.grounds);
        CHECK(diagnosis.verdict);
        CHECK(diagnosis.junction_failure);
        CHECK(diagnosis.crease_angle.low < fold(12));
        CHECK(diagnosis.crease_angle.high > fold(12));
        CHECK(std::abs(diagnosis.rolls[0].offset.mean - 20) < 15);
    }
}

TEST_CASE("The creased side is told") {
    const WearDiagnosis diagnosis = read({measured("1", of_belt({0, fold(-12), 0}, 0))});
    CHECK(diagnosis.junction_failure);
    CHECK(diagnosis.left_crease > 0.95);
    CHECK(diagnosis.right_crease < 0.05);
}

TEST_CASE("A cupped belt is told with its sign") {
    for (const double rise : {-110.0, 110.0}) {
        const WearDiagnosis diagnosis = read({measured("1", of_belt({8 * rise / 1200 / 1200, 0, 0}, 10))});
        CAPTURE(diagnosis.grounds);
        CHECK(diagnosis.verdict == Explanation::cupped);
        CHECK(diagnosis.cupping_rise.low < rise);
        CHECK(diagnosis.cupping_rise.high > rise);
    }
}

TEST_CASE("A mistracked belt is told with its offset") {
    const WearDiagnosis diagnosis = read({measured("1", of_belt({}, 85)), measured("2", of_belt({}, 85))});
    CHECK(diagnosis.likelihoods.best() == Explanation::mistracked);
    CHECK(diagnosis.rolls[0].offset.mean == doctest::Approx(85).epsilon(0.2));
}

TEST_CASE("Creases leave the centre of a stiff belt off the roll and lay that of a limp one on it") {
    const auto centre_share = [](double stiffness) {
        ReturnRun run = empty_survey().run;
        run.section = with_stiffness_across(run.section, stiffness);
        const RollContact contact = contact_on_return_roll(run, {0, fold(-12), fold(-12)}, {0.7});
        REQUIRE(contact.converged);
        double centre = 0;
        for (const RollPressure& place : contact.pressure)
            if (std::abs(place.y) < run.junction) centre += place.force * place.width;
        return centre / contact.force;
    };
    CHECK(centre_share(1) > 0.2);
    CHECK(centre_share(20) < 0.01);
}

// Marks as the trade has them, drawn by hand: common practice, no source.
TEST_CASE("The trade's marks are read as the trade reads them") {
    const auto roll = [](const std::string& name, std::vector<MarkedBand> bands) {
        return SurveyedRoll{name, {}, std::move(bands)};
    };
    SUBCASE("contact at edges and centre with gaps at the junctions is junction failure") {
        const std::vector<MarkedBand> bands{{-700, -620, Mark::none}, {-590, -400, Mark::contact}, {-290, -160, Mark::none},
                                            {-60, 60, Mark::contact}, {160, 290, Mark::none},      {400, 590, Mark::contact},
                                            {620, 700, Mark::none}};
        const WearDiagnosis diagnosis = read({roll("1", bands), roll("2", bands)});
        CAPTURE(diagnosis.grounds);
        CHECK(diagnosis.junction_failure);
    }
    SUBCASE("contact at the edges alone is cupping") {
        const std::vector<MarkedBand> bands{{-700, -630, Mark::none}, {-600, -560, Mark::contact}, {-500, -300, Mark::none},
                                            {-300, -100, Mark::none}, {-100, 100, Mark::none},     {100, 300, Mark::none},
                                            {300, 500, Mark::none},   {560, 600, Mark::contact},   {630, 700, Mark::none}};
        const std::vector<SurveyedRoll> rolls{roll("1", bands), roll("2", bands), roll("3", bands)};
        const WearDiagnosis diagnosis = read(rolls);
        CAPTURE(diagnosis.grounds);
        CHECK(diagnosis.verdict == Explanation::cupped);
        CHECK(diagnosis.cupping);
        CHECK(diagnosis.perhaps_creased);
        CHECK(!diagnosis.junction_failure);
        CHECK(diagnosis.cupping_rise.high < 0);

        // A belt twenty times as stiff across is not pressed flat by its weight, so that creases lift its centre too.
        WearSurvey stiff = empty_survey();
        stiff.rolls = rolls;
        stiff.run.section.bending(1, 1) *= 20;
        const WearDiagnosis open = diagnose(stiff);
        CAPTURE(open.grounds);
        CHECK(!open.verdict);
        CHECK(open.grounds.find("that it is cupped or creased at all has") != std::string::npos);
    }
    SUBCASE("contact in the centre alone is cupping the other way") {
        const std::vector<MarkedBand> bands{{-700, -600, Mark::none},   {-590, -450, Mark::none},  {-350, -100, Mark::contact},
                                            {-100, 100, Mark::contact}, {100, 350, Mark::contact}, {450, 590, Mark::none},
                                            {600, 700, Mark::none}};
        const WearDiagnosis diagnosis = read({roll("1", bands), roll("2", bands)});
        CAPTURE(diagnosis.grounds);
        CHECK(diagnosis.verdict == Explanation::cupped);
        CHECK(diagnosis.cupping_rise.low > 0);
    }
    SUBCASE("contact to one side alone is mistracking") {
        const std::vector<MarkedBand> bands{{-700, -560, Mark::none}, {-480, -300, Mark::contact}, {-300, 0, Mark::contact},
                                            {0, 300, Mark::contact},  {300, 600, Mark::contact},   {620, 680, Mark::contact}};
        const WearDiagnosis diagnosis = read({roll("1", bands), roll("2", bands)});
        CAPTURE(diagnosis.grounds);
        CHECK(diagnosis.likelihoods.best() == Explanation::mistracked);
        CHECK(diagnosis.rolls[0].offset.mean > 50);
    }
}

TEST_CASE("What says nothing gets no verdict") {
    const Profile creased = of_belt({0, fold(-15), fold(-15)}, 0);
    SUBCASE("one point") {
        CHECK_FALSE(read({{"1", {{0, 0.3}}, {}}}).verdict);
    }
    SUBCASE("all unsure") {
        SurveyedRoll roll = marked("1", creased);
        for (MarkedBand& band : roll.bands) band.mark = Mark::unsure;
        const WearDiagnosis diagnosis = read({roll});
        CHECK_FALSE(diagnosis.verdict);
        CHECK(diagnosis.grounds.find("0 readings") == 0);
        for (int e = 0; e < explanations - 1; ++e) CHECK(diagnosis.likelihoods.of[e] == doctest::Approx(0.18).epsilon(1e-6));
    }
    SUBCASE("no wear at all") {
        CHECK_FALSE(read({measured("1", [](double) { return 0.0; })}).verdict);
    }
    SUBCASE("a pattern of no belt") {
        const WearDiagnosis diagnosis =
            read({measured("1", [](double y) { return std::fmod(std::abs(y), 240) < 90 ? 3.0 : 0.05; }),
                  marked("2", [](double y) { return std::fmod(std::abs(y) + 60, 180) < 90 ? 1.0 : 0.0; })});
        CAPTURE(diagnosis.grounds);
        CHECK_FALSE(diagnosis.verdict);
    }
}

TEST_CASE("Rolls that disagree are shown so") {
    const WearDiagnosis diagnosis =
        read({measured("1", of_belt({0, fold(-15), fold(-15)}, 0)), measured("2", of_belt({-6e-4, 0, 0}, 0))});
    CHECK(diagnosis.rolls_disagree);
    CHECK_FALSE(diagnosis.verdict);
    CHECK(diagnosis.disagreement.find("1: a belt") == 0);
    const Profile creased = of_belt({0, fold(-15), fold(-15)}, 0);
    CHECK_FALSE(read({measured("1", creased), measured("2", creased)}).rolls_disagree);
}

TEST_CASE("A further look is where the two best explanations differ") {
    const Profile creased = of_belt({0, fold(-9), fold(-9)}, 0);
    SurveyedRoll few{"1", {}, {}};
    for (const double y : {-600.0, -400.0, 0.0, 400.0, 600.0}) few.depths.push_back({y, 0.4 * creased(y)});
    const WearDiagnosis diagnosis = read({few});
    REQUIRE(diagnosis.further);
    CHECK(std::abs(diagnosis.further->y) > 150);
    CHECK(std::abs(diagnosis.further->y) < 320);
}

TEST_CASE("The same survey has the same answer to the last bit") {
    const Profile creased = of_belt({0, fold(-9), fold(-9)}, 0);
    const WearDiagnosis one = read({measured("1", creased)}), two = read({measured("1", creased)});
    for (int e = 0; e < explanations; ++e) CHECK(one.likelihoods.of[e] == two.likelihoods.of[e]);
}
