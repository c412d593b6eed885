#include "io/chart/chart_pictures.h"
#include "io/chart/monotone_curve.h"
#include "io/chart_command.h"
#include "io/file_error.h"
#include "io/quantity.h"
#include "tests/io/made_up_study.h"

#include <doctest/doctest.h>
#include <fmt/format.h>

#include <cmath>
#include <fstream>
#include <sstream>

namespace swale {
namespace {

constexpr double width = 1000;

// A criterion that strains by a share of 1/L^2, as straight strips do, and just passes at `needed`.
DistanceRow straight(double distance, double needed) {
    return {distance, "", {{"edge", 1 - needed * needed / (distance * distance)}}};
}

std::vector<DistanceRow> straight_rows(double needed) {
    std::vector<DistanceRow> rows;
    for (const double distance : {3000.0, 800.0, 1400.0, 2000.0}) rows.push_back(straight(distance, needed));
    return rows;
}

std::string file_of(const std::filesystem::path& folder, const std::string& name) {
    std::ifstream stream(folder / name);
    std::ostringstream text;
    text << stream.rdbuf();
    return text.str();
}

}  // namespace

TEST_CASE("a monotone curve runs through its points and never beyond its neighbours") {
    const std::vector<double> x{0, 1, 3, 4, 8}, y{0, 5, 5.5, 9, 2};
    const MonotoneCurve curve(x, y);
    for (std::size_t piece = 0; piece < curve.pieces(); ++piece) {
        CHECK(curve.value(piece, x[piece]) == doctest::Approx(y[piece]));
        CHECK(curve.value(piece, x[piece + 1]) == doctest::Approx(y[piece + 1]));
        double before = y[piece];
        for (int k = 1; k <= 50; ++k) {
            const double value = curve.value(piece, x[piece] + (x[piece + 1] - x[piece]) * k / 50);
            CHECK((value - before) * (y[piece + 1] - y[piece]) >= -1e-12);
            before = value;
        }
    }
    const MonotoneCurve line({0, 1, 5}, {1, 3, 11});
    CHECK(line.value(1, 2.5) == doctest::Approx(6));
}

TEST_CASE("what is straight in 1/L^2 is found exactly whatever the order of the rows") {
    const RequiredDistance required = required_distance(straight_rows(1234), width);
    REQUIRE(required.distance);
    CHECK(*required.distance == doctest::Approx(1234).epsilon(1e-9));
    CHECK(required.binding == "edge");
    CHECK_FALSE(required.until);
    CHECK(required.remark.empty());
}

TEST_CASE("a row that just passes is the required distance itself") {
    std::vector<DistanceRow> rows = straight_rows(1400);
    rows[2].left["edge"] = 0;  // 1400 mm
    const RequiredDistance required = required_distance(rows, width);
    REQUIRE(required.distance);
    CHECK(*required.distance == doctest::Approx(1400));
    CHECK(required.remark.empty());
}

TEST_CASE("nothing is drawn out beyond the rows") {
    const RequiredDistance shorter = required_distance(straight_rows(700), width);
    CHECK_FALSE(shorter.distance);
    CHECK(shorter.remark.find("passes at 0.8 widths already") != std::string::npos);
    const RequiredDistance longer = required_distance(straight_rows(3100), width);
    CHECK_FALSE(longer.distance);
    CHECK(longer.remark == "no two neighbours pass; nearest to it edge at 3 widths");
}

TEST_CASE("a row without a solution is not bridged") {
    std::vector<DistanceRow> rows = straight_rows(1234);
    rows[2].why_none = "not converged, residual 1e-3";  // 1400 mm
    const RequiredDistance required = required_distance(rows, width);
    CHECK_FALSE(required.distance);
    CHECK(required.remark.find("passes at 2 widths already") != std::string::npos);
    CHECK(required.remark.find("1.4 widths: not converged, residual 1e-3") != std::string::npos);
}

TEST_CASE("the last criterion to pass binds and a belt that sags fails again farther on") {
    std::vector<DistanceRow> rows = straight_rows(1234);
    for (DistanceRow& row : rows) {
        row.left["slack"] = 1 - 1500 * 1500 / (row.distance * row.distance);
        row.left["sag"] = row.distance > 2500 ? -0.1 : 0.1;
    }
    const RequiredDistance required = required_distance(rows, width);
    REQUIRE(required.distance);
    CHECK(*required.distance == doctest::Approx(1500).epsilon(1e-9));
    CHECK(required.binding == "slack");
    REQUIRE(required.until);
    CHECK(*required.until > 2000);
    CHECK(*required.until < 3000);
    CHECK(required.until_binding == "sag");
}

TEST_CASE("charts of a study give back what its belt needs") {
    const MadeUpStudy study;
    std::ostringstream answer;
    REQUIRE(run_chart({study.database, study.charts, {"transition.distance", "", "pulley.lift", ""}, "svg,png"}, answer) == 0);
    std::istringstream rows(file_of(study.charts, "charts.csv"));
    std::string line;
    std::getline(rows, line);
    CHECK(line ==
          "tension[1].total,pulley.lift,belt_width_mm,required_mm,required_widths,binding,until_mm,until_binding,remark,"
          "by hand_mm");
    for (const char* tension : {"0.2 rated", "0.4 rated", "0.8 rated"})
        for (const char* lift : {"0 depths", "0.5 depths"}) {
            REQUIRE(std::getline(rows, line));
            const double wanted = made_up_distance({tension, lift});
            CHECK(line == fmt::format("{},{},1000,{:.6g},{:.6g},\"edge tension / rated tension in \"\"running\"\"\",,,,1700",
                                      tension, lift, wanted, wanted / width));
        }
    CHECK(file_of(study.charts, "maps.csv").find("0.2 rated,0 depths,2000,2,0.49,0.49") != std::string::npos);
    CHECK(file_of(study.charts, "chart-1.svg").find("belt tension [of the rated one]") != std::string::npos);
    CHECK(file_of(study.charts, "map-2-0-4-rated.svg").find("pulley lift [trough depths]") != std::string::npos);
    CHECK(std::filesystem::exists(study.charts / "map-3-0-8-rated.png"));
}

TEST_CASE("a chart names what it can't do") {
    const MadeUpStudy study;
    std::ostringstream answer;
    CHECK_THROWS_WITH_AS(run_chart({study.database, study.charts, {"distance"}}, answer),
                         doctest::Contains("\"tension[1].total\", \"pulley.lift\" or \"transition.distance\""), BadQuantity);
    CHECK_THROWS_AS(run_chart({study.database, study.charts, {"transition.distance", "transition.distance"}}, answer),
                    BadQuantity);
    CHECK_THROWS_AS(run_chart({study.folder.path() / "base.toml", study.charts}, answer), FileError);
    CHECK_THROWS_AS(run_chart({study.folder.path() / "none.h5", study.charts}, answer), FileError);
    CHECK_FALSE(std::filesystem::exists(study.charts));
}

}  // namespace swale
