#include "io/report/study/study_report.h"

#include "io/chart/chart_pictures.h"
#include "io/report/detail_sections.h"
#include "io/report/html.h"
#include "io/report/page.h"
#include "io/report/study/study_answer.h"
#include "io/report/study/study_cases.h"
#include "io/report/study/study_counts.h"
#include "io/report/study/study_figures.h"
#include "io/terminal/plain_text.h"
#include "io/version.h"

#include <fmt/format.h>

namespace swale {

namespace {

std::string listed_values(const StudyRecord& record, std::size_t axis) {
    const std::vector<std::string> values = axis_values(record, axis);
    std::string text;
    for (std::size_t k = 0; k < std::min<std::size_t>(values.size(), 40); ++k)
        text += (k == 0 ? "" : ", ") + shortened(values[k], 80);
    return values.size() > 40 ? fmt::format("{}, ... {}", text, shortened(values.back(), 80)) : text;
}

std::string varied_section(const StudyRecord& record) {
    std::vector<TextRow> rows{{"Varied", "key or name in the study file", "values", "which"}};
    for (std::size_t axis = 0; axis < record.table.axes.size(); ++axis)
        rows.push_back({shortened(axis_words(record.table.axes[axis], "").name, 80), shortened(record.table.axes[axis], 120),
                        std::to_string(axis_values(record, axis).size()), listed_values(record, axis)});
    return section("varied", "What was varied",
                   html_table("Values as the cases of the database have them; all else as in the base case", rows, "llrl"));
}

std::string hand_methods_section(const StudyRecord& record) {
    std::vector<TextRow> rows{{"Method", "cases", "enough, and it is", "enough, but a limit is exceeded",
                               "too short, but every limit holds", "too short, and it is"}};
    for (const HandMethodCount& count : count_hand_methods(record))
        rows.push_back({count.name, std::to_string(count.all()), std::to_string(count.right_enough),
                        std::to_string(count.unsafe), std::to_string(count.wasteful), std::to_string(count.right_short)});
    if (rows.size() == 1) return {};
    return section("hand-methods", "What the hand methods make of these cases",
                   html_table("Cases by what a method says of their distance, and what the solved belt does", rows, "lr") +
                       paragraph("A hand method looks at edge and centre strain alone, or at a multiple of the belt width; the "
                                 "solved belt is held against every limit of its case. Cases without a solution, and those "
                                 "for which a method asks for no distance, are not counted."));
}

std::string provenance_section(const StudyRecord& record) {
    const std::string again = fmt::format(
        "Solved by swale {}; this page was made from the study's database by swale {}. Run again with: swale study "
        "STUDY.toml --out STUDY.h5, with the two files below, the base case under the name that the study file "
        "gives it.",
        record.swale_version, version());
    return section("files", "The study file and its base case, verbatim",
                   paragraph(again) + "<h3>Study file</h3>\n<pre class=\"case\" tabindex=\"0\">" +
                       escaped_lines(record.study_text) + "</pre>\n<h3>Base case</h3>\n<pre class=\"case\" tabindex=\"0\">" +
                       escaped_lines(record.case_text) + "</pre>\n");
}

}  // namespace

std::string study_report_html(const StudyRecord& record) {
    const StudyFigures figures = study_figures(record);
    const std::string body = study_answer(record, figures) + section("study-charts", "Charts", figures.section) +
                             study_cases_section(record) + hand_methods_section(record) + failed_cases_section(record) +
                             varied_section(record) + cautions_section() + provenance_section(record) + signatures_section();
    const nlohmann::ordered_json data{{"states", nlohmann::ordered_json::array()}, {"charts", figures.charts}};
    return page_html({record.table.title, study_question(record), body,
                      data.dump(-1, ' ', false, nlohmann::ordered_json::error_handler_t::replace)});
}

std::filesystem::path study_report_path(const std::filesystem::path& database) {
    std::filesystem::path path = database;
    return path.replace_extension(".html");
}

}  // namespace swale
