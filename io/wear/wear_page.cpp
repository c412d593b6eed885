#include "io/wear/wear_page.h"

#include "io/markup_text.h"
#include "io/terminal/cautions.h"
#include "io/terminal/plain_text.h"
#include "io/wear/page_text.h"
#include "io/wear/roll_drawing.h"

#include <fmt/format.h>

namespace swale {

namespace {

constexpr std::size_t shown_rolls = 12;

std::string section(const std::string& title, const std::string& body) {
    return "<h2>" + escaped(title) + "</h2>\n" + body;
}

std::string list(const std::vector<std::string>& lines) {
    std::string text = "<ul>\n";
    for (const std::string& line : lines) text += "<li>" + escaped(line) + "</li>\n";
    return text + "</ul>\n";
}

// The word of the verdict and what it rests on, as the other reports have them.
std::string verdict(const WearReport& report) {
    const std::string text = headline(report);
    const std::size_t colon = text.find(": ");
    const bool bent = report.diagnosis.junction_failure || report.diagnosis.cupping;
    const char* const kind = !report.diagnosis.verdict ? " open" : bent ? " over" : "";
    return fmt::format("<div class=\"verdict{}\" id=\"answer\"><p class=\"word\">{}</p><p>{}</p></div>\n", kind,
                       escaped(text.substr(0, colon)), escaped(text.substr(colon + 2)));
}

std::string likelihood_row(const WearDiagnosis& diagnosis, Explanation explanation) {
    const double likelihood = diagnosis.likelihoods[explanation];
    return fmt::format(
        "<tr><td>{}</td><td class=\"number\">{:.3f}</td><td><svg viewBox=\"0 0 300 12\"><rect "
        "class=\"likely\" width=\"{:.1f}\" height=\"12\"/></svg></td></tr>\n",
        escaped(name_of(explanation)), likelihood, 300 * likelihood);
}

std::string likelihoods(const WearReport& report) {
    std::string text = "<table>\n";
    for (const Explanation explanation : ranked(report.diagnosis)) text += likelihood_row(report.diagnosis, explanation);
    return text + likelihood_row(report.diagnosis, Explanation::other) + "</table>\n";
}

std::string rolls(const WearReport& report) {
    const std::vector<Explanation> shown = three_explanations(report.diagnosis);
    std::string text =
        "<p class=\"small\">Left is +. Brown: what was read (bars: depths; bands: contact, none, broken line: unsure). Blue: "
        "contact as "
        "predicted, with its standard deviation; \"even\" is a belt that presses evenly. Points: depths scaled to the "
        "prediction.</p>\n";
    if (report.diagnosis.rolls_disagree)
        text += "<p><b>Rolls disagree</b>: " + escaped(report.diagnosis.disagreement) + "</p>\n";
    for (std::size_t k = 0; k < report.diagnosis.rolls.size() && k < shown_rolls; ++k)
        text += roll_drawing(report, static_cast<int>(k), shown);
    if (report.diagnosis.rolls.size() > shown_rolls) text += "<p class=\"small\">Further rolls: see wear.json.</p>\n";
    return text;
}

std::string survey_facts(const WearReport& report) {
    const WearSurvey& survey = report.file.survey;
    const std::string belt = report.file.belt.designation.empty() ? "section given outright" : report.file.belt.designation;
    return list(
        {fmt::format("belt {}, {:.0f} mm, D22 {} N m, taken to lie between {:.2f} and {:.2f} times that: {}", belt,
                     report.file.belt.width, significant(report.file.belt.section.bending(1, 1) / 1000), survey.stiffness_low,
                     survey.stiffness_high, report.file.stiffness_source),
         fmt::format("return run: {:.3g} kN, rolls {:.0f} mm apart, {:.0f} mm thick and {:.0f} mm long, {} side on them",
                     survey.run.tension / 1000, survey.run.spacing, survey.run.roll_diameter, survey.roll_length,
                     survey.carrying_side_down ? "carrying" : "pulley"),
         fmt::format("junctions {:.0f} mm from the middle", survey.run.junction),
         fmt::format(
             "likelihoods rest on assumptions: each explanation is taken to be as likely as the others beforehand, and wear "
             "to grow with pressure; a verdict needs {:.2f}",
             stated_level)});
}

std::string examples(const WearReport& report) {
    std::string text =
        "<p class=\"small\">Solved by the shell for this belt, tension and spacing; above the roll the belt, below it the "
        "force it "
        "presses with.</p>\n";
    for (const ExamplePressure& example : report.examples)
        text += example.contact.converged ? pressure_drawing(report, example)
                                          : "<p>" + escaped(example.name + ": " + example.contact.reason) + "</p>\n";
    return text;
}

}  // namespace

std::string wear_page(const WearReport& report) {
    std::string body = "<h1>" + escaped(report.file.title) + "</h1>\n" + verdict(report);
    body += "<p class=\"caution\">" + escaped(cautions) + "</p>\n";
    body += section("How likely", likelihoods(report)) + section("Rolls: observed and predicted contact", rolls(report));
    body += section("Fitted values, 5 % to 95 %", list(fitted_values(report)));
    body += section(further_look_title(report.diagnosis), list({further_look_text(report)}));
    body += section("What follows", list(what_follows(report)));
    body += section("What belts of each kind press with here", examples(report));
    return html_page(report.file.title, "wear", body + section("What this rests on", survey_facts(report)));
}

}  // namespace swale
