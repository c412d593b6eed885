// Reports for the browser tests: one with hostile text in every name, one with 20,000 quads.
#include "io/report/report.h"
#include "io/report/study/study_report.h"
#include "io/whole_file.h"
#include "tests/io/made_up_study.h"
#include "tests/io/sample_run.h"

#include <cmath>

using namespace swale;

namespace {

StudyRecord hostile_study() {
    const std::string hostile =
        "</script><script>document.title='taken'</script>\"'><img src=x onerror=\"document.title='taken'\">"
        "\u202e\u05de\u05e1\u05d5\u05e2" +
        std::string(400, 'W');
    StudyRecord record = read_study_record(MadeUpStudy().database);
    record.table.title = record.study_text = record.case_text = record.table.axes[1] = hostile;
    for (ChartedCase& charted : record.table.cases) {
        charted.labels[1] += hostile;
        charted.row.left = {{hostile, charted.row.least()->second}};
    }
    return record;
}

RunRecord hostile_run() {
    RunRecord record = sample_run();
    const std::string hostile =
        "</script><script>document.title='taken'</script>\"'><img src=x onerror=\"document.title='taken'\">";
    const std::string right_to_left = "\u202e\u05de\u05e1\u05d5\u05e2 ";
    record.transition.title = hostile + right_to_left + std::string(400, 'W');
    record.result.states[0].name = record.transition.states[0].name = right_to_left + hostile + std::string(200, 'x');
    for (Judgement& judgement : record.result.criteria) judgement.state = record.result.states[0].name;
    record.transition.belt.designation = record.case_file = hostile;
    record.case_text = hostile + "\n" + std::string(3000, 'y') + "\n";
    record.transition.belt.data.front().origin.source = hostile;
    record.result.states[0].notes = {hostile};
    return record;
}

/// A trough that deepens along x, with a strain that grows towards the edges.
SurfacePoint trough_point(double x, double y) {
    SurfacePoint point;
    const double depth = x / 2400 * y * y / 1800;
    point.x = x;
    point.y = y;
    point.position = {x, y, depth};
    point.displacement = {0, 0, depth};
    point.strain = 0.004 + 1e-8 * y * y;
    point.force = {8000 * point.strain, 0, 0};
    return point;
}

RunRecord fine_run() {
    RunRecord record = sample_run();
    StateResult& state = record.result.states[0];
    state.surface = {201, 101, {}};
    for (int i = 0; i < 201; ++i)
        for (int j = 0; j < 101; ++j) state.surface.points.push_back(trough_point(12.0 * i, 12.0 * (j - 50)));
    state.mode_symmetric.reset();
    return record;
}

}  // namespace

int main(int, char** arguments) {
    const std::filesystem::path folder = arguments[1];
    write_whole_file(folder / "hostile.html", report_html(hostile_run()));
    write_whole_file(folder / "fine.html", report_html(fine_run()));
    write_whole_file(folder / "study.html", study_report_html(read_study_record(MadeUpStudy().database)));
    write_whole_file(folder / "hostile-study.html", study_report_html(hostile_study()));
}
