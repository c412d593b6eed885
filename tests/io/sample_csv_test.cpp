#include "io/sample_csv.h"

#include "tests/io/sample_run.h"

#include <doctest/doctest.h>

#include <sstream>
#include <vector>

using namespace swale;

namespace {

std::vector<std::string> lines_of(const std::string& text) {
    std::istringstream stream(text);
    std::vector<std::string> lines;
    for (std::string line; std::getline(stream, line);) lines.push_back(line);
    return lines;
}

}  // namespace

TEST_CASE("along.csv: header of the contract and one line a sample of every converged state") {
    const std::vector<std::string> lines = lines_of(along_csv(sample_run().result));
    REQUIRE(lines.size() == 5);
    CHECK(lines[0] ==
          "state,x_mm,spatial_x_mm,edge_strain,junction_strain,centre_strain,edge_z_mm,junction_z_mm,centre_z_mm,"
          "edge_tension_N_per_mm,centre_tension_N_per_mm,junction_curvature_per_mm");
    CHECK(lines[1].rfind("running full,0,0,0.00236", 0) == 0);
}

TEST_CASE("across.csv: header of the contract and one line a point with its section") {
    const std::vector<std::string> lines = lines_of(across_csv(sample_run().result));
    REQUIRE(lines.size() == 4);
    CHECK(lines[0] ==
          "state,section,x_mm,y_mm,spatial_y_mm,strain,tension_N_per_mm,z_mm,transverse_curvature_per_mm,contact_pressure_MPa");
    CHECK(lines[1].rfind("running full,mid-transition,1200,-600,-594,", 0) == 0);
    CHECK(lines[3].rfind("running full,set 1,2400,0,0,", 0) == 0);
}

TEST_CASE("csv: a number reads back to the same bits") {
    const RunRecord record = sample_run();
    const std::string line = lines_of(across_csv(record.result))[1];
    const double pressure = std::stod(line.substr(line.rfind(',') + 1));
    CHECK(pressure == record.result.states[0].across[0].points[0].contact_pressure);
}

TEST_CASE("csv: a name with a comma or a quote stands in quotes and what is not defined is empty") {
    RunRecord record = sample_run();
    record.result.states[0].name = "a, \"b\"";
    record.result.states[0].across[0].points[0].contact_pressure = std::nan("");
    const std::string line = lines_of(across_csv(record.result))[1];
    CHECK(line.rfind("\"a, \"\"b\"\"\",mid-transition,", 0) == 0);
    CHECK(line.back() == ',');
}
