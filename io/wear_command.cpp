#include "io/wear_command.h"

#include "io/progress.h"
#include "io/quantity.h"
#include "io/result_folder.h"
#include "io/wear/field_sheet.h"
#include "io/wear/wear_answer.h"
#include "io/wear/wear_page.h"
#include "io/whole_file.h"

#include <utility>

namespace swale {

namespace {

// The transition is solved where it could be the cause.
WearReport report_of(WearSurveyFile file) {
    WearReport report{std::move(file), {}, {}, std::nullopt};
    report.diagnosis = diagnose(report.file.survey);
    report.examples = example_pressures(report.file.survey);
    if ((report.diagnosis.junction_failure || report.diagnosis.perhaps_creased) && report.file.transition)
        report.transition = transition_advice(*report.file.transition, terminal_progress());
    return report;
}

void write_field_sheet(const std::filesystem::path& path, std::ostream& answer) {
    write_whole_file(path, field_sheet());
    answer << "Field sheet in " << path.string() << "\n";
}

}  // namespace

int run_wear(const WearRequest& request, std::ostream& answer) {
    if (request.survey_file.empty() && !request.sheet)
        throw BadQuantity("wear: a survey is missing; allowed: a survey file (TOML), or --field-sheet FILE alone");
    if (request.sheet) write_field_sheet(*request.sheet, answer);
    if (request.survey_file.empty()) return 0;
    WearSurveyFile file = read_wear_survey(request.survey_file);
    const std::filesystem::path folder = request.out.value_or(request.survey_file.stem().string() + "-wear");
    prepare_result_folder(folder);
    const WearReport report = report_of(std::move(file));
    write_whole_file(folder / "survey.toml", report.file.text);
    write_whole_file(folder / "wear.json", wear_json(report));
    write_whole_file(folder / "wear.html", wear_page(report));
    if (request.json)
        answer << wear_json(report);
    else
        answer << wear_answer(report) << "\nResults in " << folder.string() << "\n";
    return report.transition ? report.transition->exit_code : 0;
}

}  // namespace swale
