#include "io/report/study/study_report.h"

#include "io/chart/design_charts.h"
#include "io/quantity.h"
#include "io/report/study/study_counts.h"
#include "io/report_command.h"
#include "io/study_command.h"
#include "io/text_file.h"
#include "tests/io/made_up_study.h"

#include <doctest/doctest.h>

#include <ctime>
#include <fstream>
#include <sstream>

using namespace swale;

namespace {

bool holds(const std::string& text, const std::string& part) {
    return text.find(part) != std::string::npos;
}

std::string report_of(const MadeUpStudy& study) {
    return study_report_html(read_study_record(study.database));
}

/// The made-up study with a case that did not converge and one that can't be.
MadeUpStudy study_with_open_cases() {
    const StudyPlan plan = MadeUpStudy().plan();
    return {made_up_study_text,
            {{3, open_record(plan.at(3), "residual 2e-3 > 1e-6 after 60 iterations")},
             {24, unread_record(plan.at(24), "trough.angle: given \"95 deg\"")}}};
}

StudyRecord hostile_study(const std::string& hostile) {
    StudyRecord record = read_study_record(study_with_open_cases().database);
    record.table.title = record.study_text = record.case_text = record.table.axes[1] = hostile;
    record.table.hand_methods = {hostile};
    for (std::size_t k = 0; k < record.cases.size(); ++k) {
        ChartedCase& charted = record.table.cases[k];
        charted.labels[1] += hostile;
        charted.row.left = {{hostile, 0.1 * static_cast<double>(k) - 1}};
        charted.hand_methods = {{hostile, 1500.0}};
        record.cases[k].reason += record.cases[k].solved() ? "" : hostile;
    }
    return record;
}

/// The made-up cases over and over, each time for another belt.
StudyRecord large_study(int cases) {
    const StudyRecord small = read_study_record(MadeUpStudy().database);
    StudyRecord record = small;
    record.planned = cases;
    record.table.axes.push_back("belt.designation");
    record.table.cases.clear();
    record.cases.clear();
    for (int number = 1; number <= cases; ++number) {
        const std::size_t k = static_cast<std::size_t>(number - 1) % small.cases.size();
        record.cases.push_back(small.cases[k]);
        record.cases.back().number = number;
        record.table.cases.push_back(small.table.cases[k]);
        record.table.cases.back().labels.push_back("EP " + std::to_string((number - 1) / 24) + "/4 6+3");
    }
    return record;
}

}  // namespace

TEST_CASE("study report: verdicts and hand methods are counted from the database alone") {
    const MadeUpStudy study = study_with_open_cases();
    const StudyRecord record = read_study_record(study.database);
    const OutcomeCounts counts = count_outcomes(record, all_cases(record));
    int within = 0;  // by the formula that the results were made of
    const StudyPlan plan = study.plan();
    for (int number = 1; number <= plan.size(); ++number)
        within += number != 3 && number != 24 &&
                  made_up_distance(plan.at(number).labels) <= 1000 * label_number(plan.at(number).labels[2]);
    CHECK(counts.within == within);
    CHECK(counts.all() == 24);
    CHECK(counts.not_converged == 1);
    CHECK(counts.not_solved == 1);
    const auto methods = count_hand_methods(record);
    REQUIRE(methods.size() == 1);
    CHECK(methods.front().all() == 22);
    CHECK(methods.front().wasteful > 0);  // 1700 mm asked for, a raised pulley needs 1200 mm
    const std::string html = report_of(study);
    CHECK(holds(html, std::to_string(within) + " OF 24 CASES PASS"));
    CHECK(holds(html, "1 did not converge; 1 can&#39;t be solved"));
}

TEST_CASE("study report: each open case is there with its reason and the files verbatim") {
    const std::string html = report_of(study_with_open_cases());
    const std::string markup = html.substr(0, html.find("<script"));
    for (const char* part : {"residual 2e-3 &gt; 1e-6 after 60 iterations", "given &quot;95 deg&quot;", "Study file",
                             "values = [&quot;0.2 rated&quot;", "designation = &quot;EP 800/4 6+3&quot;", "Lock out the drive",
                             "pulley lift [trough depths]", "required distance [belt widths]"}) {
        INFO(part);
        CHECK(holds(markup, part));
    }
}

TEST_CASE("study report: the command makes the same page from the database again") {
    const MadeUpStudy study = study_with_open_cases();
    std::ostringstream answer;
    CHECK(run_report({study.database, "none"}, answer) == 0);
    CHECK(read_text_file(study.folder.path() / "made-up.html") == report_of(study));
}

TEST_CASE("study report: hostile names stay text") {
    const std::string hostile = "</script><script>alert(1)</script>\"'><img src=x onerror=alert(2)>\u202e";
    const std::string html = study_report_html(hostile_study(hostile + std::string(5000, 'W')));
    CHECK_FALSE(holds(html, "<img src=x"));
    CHECK_FALSE(holds(html, "<script>alert"));
    CHECK_FALSE(holds(html, "\u202e"));
    CHECK(holds(html, "<h1><bdi>&lt;/script&gt;"));
}

TEST_CASE("study report: 2,160 cases stay within 1.5 MB and are a matter of a second") {
    const StudyRecord record = large_study(2160);
    const std::clock_t start = std::clock();
    const std::string html = study_report_html(record);
    const double seconds = static_cast<double>(std::clock() - start) / CLOCKS_PER_SEC;
    MESSAGE(seconds << " s, " << html.size() << " bytes");
    CHECK(html.size() < 1'500'000);
    CHECK(seconds < 5);  // 0.2 s on a machine of its own, ten times that in a checked build
    CHECK(holds(html, "OF 2160 CASES PASS"));
}

TEST_CASE("study report: a random sample is a list cut to the cases nearest to a limit") {
    StudyRecord record = large_study(2160);
    for (std::size_t k = 0; k < record.cases.size(); ++k) {
        auto& labels = record.table.cases[k].labels;
        for (std::size_t axis = 0; axis < labels.size(); ++axis)
            labels[axis] = std::to_string(1 + 0.0001 * static_cast<double>((k * (axis + 1) * 7) % 2161)) + " widths";
    }
    const std::string html = study_report_html(record);
    CHECK(holds(html, "The 300 of 2160 nearest to a limit"));
    CHECK(holds(html, "1 to 1.04 belt widths"));
    CHECK(holds(html, "No chart can be drawn"));
    CHECK(html.size() < 1'500'000);
}

TEST_CASE("study report: a study of nothing that can be read says why") {
    const StudyPlan plan = MadeUpStudy().plan();
    std::map<int, std::string> records;
    for (int number = 1; number <= plan.size(); ++number)
        records[number] = unread_record(plan.at(number), "belt.width: given \"" + std::to_string(number) + " mm\"");
    const std::string html = report_of({made_up_study_text, records});
    CHECK(holds(html, "0 OF 24 CASES PASS"));
    CHECK(holds(html, "No chart can be drawn"));
    CHECK(holds(html, "<bdi>24</bdi></th><td><bdi>bad input</bdi>"));  // reasons that differ in numbers alone count as one
}

TEST_CASE("study report: a page of somebody else's is not written over") {
    const MadeUpStudy study;
    std::ostringstream answer;
    std::ofstream(study.folder.path() / "mine.html") << "<html>mine</html>";
    StudyRequest request;
    request.study_file = study.folder.path() / "study.toml";
    request.out = study.folder.path() / "mine.h5";
    CHECK_THROWS_WITH_AS(run_study_command(request, answer), doctest::Contains("no report of ours"), BadQuantity);
    request.out = study.folder.path() / "study.html";
    CHECK_THROWS_WITH_AS(run_study_command(request, answer), doctest::Contains("the name of the report"), BadQuantity);
    CHECK(read_text_file(study.folder.path() / "mine.html") == "<html>mine</html>");
}
