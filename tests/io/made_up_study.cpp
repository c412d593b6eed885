#include "tests/io/made_up_study.h"

#include "io/chart/design_charts.h"
#include "io/study/study_database.h"
#include "io/whole_file.h"

#include <nlohmann/json.hpp>

#include <cmath>
#include <fstream>
#include <utility>

namespace swale {

namespace {

using Json = nlohmann::ordered_json;

const std::string base_case = R"([belt]
width = "1000 mm"
designation = "EP 800/4 6+3"
[[tension]]
name = "running"
total = "0.5 rated"
[pulley]
end = "tail"
diameter = "630 mm"
lift = "0 mm"
[trough]
angle = "35 deg"
[transition]
distance = "2400 mm"
)";

constexpr double width = 1000;

std::string record_of(const PlannedCase& planned, const std::string& status, const std::string& reason, const Json& summary) {
    return Json{{"case", planned.number}, {"inputs", planned.labels}, {"case_text", planned.text}, {"status", status},
                {"reason", reason},       {"summary", summary},       {"curves", Json::array()}}
        .dump();
}

Json summary_of(const std::string& verdict, const Json& state, const Json& criteria) {
    return {{"verdict", verdict},
            {"states", Json::array({state})},
            {"criteria", criteria},
            {"hand_methods", Json::array({Json{{"name", "by hand"}, {"minimum_distance_mm", 1700}}})}};
}

Json state_of(const std::string& name, const std::string& status, const std::string& reason) {
    return {{"name", name}, {"status", status}, {"reason", reason}, {"supports", Json::array()}};
}

}  // namespace

const std::string made_up_study_text = R"(title = "Charted"
case = "base.toml"
[[vary]]
key = "tension[1].total"
values = ["0.2 rated", "0.4 rated", "0.8 rated"]
[[vary]]
key = "pulley.lift"
values = ["0 depths", "0.5 depths"]
[[vary]]
key = "transition.distance"
values = ["1 widths", "1.5 widths", "2 widths", "3 widths"]
)";

double made_up_distance(const std::vector<std::string>& labels) {
    return 1200 + 1000 * label_number(labels[0]) - 400 * label_number(labels[1]);
}

std::string solved_record(const PlannedCase& planned, const std::string& state) {
    const double distance = label_number(planned.labels[2]) * width;
    const double used = 1.15 * std::pow(made_up_distance(planned.labels) / distance, 2);
    const bool passed = used - 0.01 <= 1.15;
    const Json criterion{{"name", edge_criterion}, {"state", state}, {"value", used - 0.01},
                         {"limit", 1.15},          {"error", 0.01},  {"passed", passed}};
    return record_of(
        planned, "solved", "",
        summary_of(passed ? "within limits" : "over a limit", state_of(state, "converged", ""), Json::array({criterion})));
}

std::string open_record(const PlannedCase& planned, const std::string& reason) {
    return record_of(planned, "solved", "",
                     summary_of("not converged", state_of("running", "not converged", reason), Json::array()));
}

std::string unread_record(const PlannedCase& planned, const std::string& reason) {
    return record_of(planned, "bad input", reason, nullptr);
}

MadeUpStudy::MadeUpStudy(const std::string& text, std::map<int, std::string> records) {
    std::ofstream(folder.path() / "base.toml") << base_case;
    std::ofstream(folder.path() / "study.toml") << text;
    const StudyPlan cases = plan();
    for (int number = 1; number <= cases.size(); ++number) records.emplace(number, solved_record(cases.at(number)));
    write_whole_file(database, study_database(cases, records, database));
}

StudyPlan MadeUpStudy::plan() const {
    return StudyPlan(read_study(folder.path() / "study.toml"));
}

}  // namespace swale
