#include "io/wear/wear_answer.h"

#include "io/terminal/belt_warnings.h"
#include "io/terminal/cautions.h"
#include "io/terminal/plain_text.h"
#include "io/terminal/text_table.h"

#include <fmt/format.h>

namespace swale {

namespace {

std::string listed_lines(const std::string& title, const std::vector<std::string>& lines) {
    std::string text = title + "\n";
    for (const std::string& line : lines) text += "  - " + wrapped(line, 4);
    return text;
}

// Names of rolls differ at their ends: "return roll 23".
std::string name_end(const std::string& name) {
    const std::string text = printable(name);
    if (text.size() <= 8) return text;
    std::size_t start = text.size() - 7;
    while ((static_cast<unsigned char>(text[start]) & 0xC0) == 0x80) ++start;  // not inside a character
    return ".." + text.substr(start);
}

std::string likelihood_table(const WearDiagnosis& diagnosis) {
    std::vector<TextRow> rows{{"Explanation", "all rolls"}};
    for (const RollJudgement& roll : diagnosis.rolls)
        if (rows[0].size() < 8) rows[0].push_back(name_end(roll.name));
    std::vector<Explanation> order = ranked(diagnosis);
    order.push_back(Explanation::other);
    for (const Explanation explanation : order) {
        TextRow row{name_of(explanation), fmt::format("{:.3f}", diagnosis.likelihoods[explanation])};
        for (const RollJudgement& roll : diagnosis.rolls)
            if (row.size() < 8) row.push_back(fmt::format("{:.2f}", roll.alone[explanation]));
        rows.push_back(std::move(row));
    }
    return text_table(rows, "lr");
}

}  // namespace

std::string wear_answer(const WearReport& report) {
    const WearDiagnosis& diagnosis = report.diagnosis;
    std::string text = wrapped(report.file.title) + wrapped(headline(report)) + belt_warnings(report.file.belt) + "\n";
    text += likelihood_table(diagnosis);
    text += "  likelihood of each explanation, of all rolls together and of each alone\n\n";
    if (diagnosis.rolls_disagree) text += wrapped("Rolls disagree: " + diagnosis.disagreement) + "\n";
    text +=
        listed_lines("Fitted (5 % to 95 %; + is left, looking along the return run's motion)", fitted_values(report)) + "\n";
    text += listed_lines(further_look_title(diagnosis), {further_look_text(report)}) + "\n";
    text += listed_lines("What follows", what_follows(report)) + "\n";
    for (const std::string& failure : diagnosis.failures) text += "  - " + wrapped("a shape is missing: " + failure, 4);
    return text + cautions;
}

}  // namespace swale
