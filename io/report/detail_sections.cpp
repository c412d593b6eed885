#include "io/report/detail_sections.h"

#include "io/report/html.h"
#include "io/report/page.h"
#include "io/report/state_charts.h"
#include "io/terminal/cautions.h"
#include "io/terminal/criteria_lines.h"
#include "io/terminal/notes.h"
#include "io/terminal/path_section.h"
#include "io/terminal/places_section.h"
#include "io/terminal/plain_text.h"
#include "io/verdict.h"
#include "io/version.h"
#include "solver/screening.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace swale {

namespace {

std::string percent(const std::optional<double>& strain) {
    return strain ? significant(*strain * 100) : "-";
}

std::string force_cell(const StateResult& state, const std::string& name) {
    const auto support = std::ranges::find(state.supports, name, &SupportForce::name);
    if (support == state.supports.end()) return "-";
    if (support->lift_off.value_or(0) > 0) return "off by " + significant(*support->lift_off, 2) + " mm";
    return significant(support->force.norm() / 1e3);
}

std::string forces_table(const TransitionResult& result) {
    const auto solved = std::ranges::find_if(result.states, converged);
    if (solved == result.states.end() || solved->supports.empty()) return {};
    std::vector<TextRow> rows{{"Support"}};
    for (const StateResult& state : result.states) rows.front().push_back(state.name);
    for (const SupportForce& support : solved->supports) {
        rows.push_back({support.name});
        for (const StateResult& state : result.states)
            rows.back().push_back(converged(state) ? force_cell(state, support.name) : "no solution");
    }
    return html_table("Forces on the belt, resultant [kN]", rows, "lr");
}

std::string others_table(const TransitionResult& result) {
    std::vector<TextRow> rows{
        {"State", "Found from", "Energy above [J]", "Farthest [mm]", "Edge strain [%]", "Lowest tension [N/mm]"}};
    for (const StateResult& state : result.states)
        for (const OtherEquilibrium& other : state.others)
            rows.push_back({state.name, other.start, significant(other.energy_difference / 1e3), significant(other.distance),
                            significant(100 * other.edge_strain_max.value), significant(other.tension_min.value)});
    return rows.size() == 1 ? std::string()
                            : html_table("Other equilibria of slack states, judged like the state itself", rows, "llr");
}

std::string path_table(const TensionPath& path) {
    const std::vector<TextRow> rows = tension_path_rows(path);
    return rows.empty() ? "" : html_table("As the tension falls. " + vanishing_words(path), rows, "rr");
}

std::vector<TextRow> method_rows(const RunRecord& record, const Screening& screening) {
    const double width = record.transition.layout.belt_width;
    std::vector<TextRow> rows{
        {"Method", "Needs [mm]", "Belt widths", "Edge strain [%]", "Centre strain [%]", "What binds", "Source"}};
    for (const HandMethod& method : screening.methods) {
        const auto& needs = method.minimum_distance;
        rows.push_back({method.name, needs ? fmt::format("{:.0f}", *needs) : "-",
                        needs ? fmt::format("{:.2f}", *needs / width) : "-", percent(method.edge_strain),
                        percent(method.centre_strain), method.remark, method.source});
    }
    return rows;
}

std::string number(double value) {
    return significant(value, 4);
}

std::string model_words(const RunRecord& record) {
    const TransitionLayout& layout = record.transition.layout;
    const SolveSettings& settings = record.transition.settings;
    const std::string grip = layout.pulley.support == Support::held ? "The belt's end is held on a line in place of the pulley."
                             : layout.pulley.grip == Grip::stuck
                                 ? "On the pulley the section is plane at its top and sticks there."
                                 : "On the pulley the belt slides without friction.";
    return fmt::format(
        "The belt is solved as a nonlinear Kirchhoff-Love shell of bicubic B-splines with the section law N = A e, M = D k, in "
        "frictionless "
        "contact with {}, at rest, for each state's total tension. {} {} full sets are modelled{}. {} "
        "model; wanted discretisation error of what is judged {} %; factor on every knot span {}. Positive: tension, stretch, "
        "curvature that "
        "makes a trough, forces on the belt, z up. Strain is stretch less one on the carcass' mid-surface.",
        layout.trough.support == Support::held ? "its supports" : "rigid rolls and pulley", grip, record.result.sets,
        layout.trough.sets ? ", a symmetry plane behind the last" : ", an endless trough behind the last",
        settings.model == Symmetry::half ? "Symmetric half" : "Full", significant(100 * settings.accuracy, 2),
        significant(settings.grid));
}

std::string convergence_table(const TransitionResult& result) {
    std::vector<TextRow> rows{{"State", "Grid", "Unknowns", "Newton iterations", "Relative residual", "Tolerance"}};
    for (const StateResult& state : result.states)
        for (const NewtonRecord& entry : state.newton)
            rows.push_back({state.name, entry.grid, std::to_string(entry.unknowns), std::to_string(entry.iterations),
                            fmt::format("{:.1e}", entry.residual), fmt::format("{:.0e}", entry.tolerance)});
    return html_table("Convergence record", rows, "llr");
}

std::string errors_table(const TransitionResult& result) {
    std::vector<TextRow> rows{
        {"State", "Status", "Edge strain [%]", "+- grid", "+- far end", "Lowest tension [N/mm]", "+- grid", "+- far end"}};
    const auto error = [](const std::optional<double>& value, double factor) {
        return value ? significant(std::abs(*value) * factor, 2) : "-";
    };
    for (const StateResult& state : result.states) {
        const Reading &edge = state.edge_strain_max, &low = state.tension_min;
        if (converged(state))
            rows.push_back({state.name, "converged", significant(100 * edge.value), error(edge.error, 100),
                            error(edge.far_end_error, 100), significant(low.value), error(low.error, 1),
                            error(low.far_end_error, 1)});
        else
            rows.push_back({state.name, "not converged", "-", "-", "-", "-", "-", "-"});
    }
    return html_table("Estimated errors: of the grid from two grids, of the far end from two lengths of trough", rows, "llr");
}

std::string sources_table(const std::vector<Judgement>& criteria) {
    std::vector<TextRow> rows{{"Criterion", "Limit", "Source of the limit"}};
    for (const std::string& name : criterion_names(criteria)) {
        const Judgement& judgement = first_with_limit(criteria, name);
        if (judgement.limit) rows.push_back({name, well_set(limit_text(criteria, name)), judgement.source});
    }
    return rows.size() == 1 ? std::string() : html_table("Where the limits come from", rows, "lll");
}

}  // namespace

std::string readings_section(const RunRecord& record) {
    std::string body;
    const std::vector<TextRow> places = place_rows(record);
    if (places.size() > 1)
        body += html_table(
            "Extremes over all states: x from the pulley on the unstretched belt; errors of the grid and of the far end as "
            "estimated",
            places, "lrrrrll");
    body += forces_table(record.result) + others_table(record.result) + path_table(record.result.path);
    return body.empty() ? body : section("readings", "Readings and forces", body);
}

std::string hand_methods_report(const RunRecord& record) {
    const Screening screening = screen(record.transition);
    if (screening.methods.empty()) return {};
    std::string body =
        figure(draw(required_distances(record)), "What each hand method asks for. Darker: more than this case has.");
    body += html_table(
        "Hand methods; edge strain under the highest tension and centre strain under the lowest, at the case's own distance",
        method_rows(record, screening), "lrrrrll");
    body += html_list(compare(record.transition, record.result.states));
    return section("hand-methods", "Hand methods beside the shell", body + html_list(screening.practice));
}

std::string belt_section(const RunRecord& record) {
    const Belt& belt = record.transition.belt;
    std::vector<TextRow> rows{{"Quantity", "Value", "Unit", "Low", "High", "Grade", "Origin"}};
    for (const BeltDatum& datum : belt.data) {
        const std::string range = datum.range ? "; range: " + datum.range->source : "";
        rows.push_back({datum.name, number(datum.value), well_set(datum.unit), datum.range ? number(datum.range->low) : "",
                        datum.range ? number(datum.range->high) : "", datum.origin.grade, datum.origin.source + range});
    }
    const std::string name =
        belt.designation.empty() ? "Section given in the case file." : "Designation " + belt.designation + ".";
    return section("belt", "The belt",
                   paragraph(fmt::format("{} Width {:.0f} mm.", name, belt.width)) + html_list(belt.warnings) +
                       html_table("Numbers of the belt and where each comes from", rows, "lrlrrll"));
}

std::string method_section(const RunRecord& record) {
    return section("method", "Method, mesh and convergence",
                   paragraph(model_words(record)) + errors_table(record.result) + convergence_table(record.result));
}

std::string judgement_section(const RunRecord& record) {
    std::string body = sources_table(record.result.criteria);
    std::vector<std::string> open, notes;
    for (const auto& [names, reason] : not_judged(record.result)) open.push_back(names + ": " + reason);
    for (const StateResult& state : record.result.states)
        if (!converged(state)) notes.push_back(state.name + ": no solution, " + state.reason);
    for (const StateNote& note : state_notes(record.result)) notes.push_back(note.state + ": " + note.sentence);
    if (!open.empty()) body += "<h3>Reported, not judged</h3>\n" + html_list(open);
    if (!notes.empty()) body += "<h3>Notes on the states</h3>\n" + html_list(notes);
    return section("judgements", "Limits, and what was not judged", body);
}

std::string cautions_section() {
    return section(
        "cautions", "Before anyone works on the conveyor",
        "<div class=\"cautions\">" + paragraph(cautions) +
            paragraph(
                "Results are estimates for an engineer, not instructions. Rolls are taken as frictionless and the belt as "
                "linear elastic and at rest; what else the model leaves out stands in the program's README.") +
            "</div>\n");
}

std::string closing_sections(const RunRecord& record) {
    std::string verbatim = paragraph("Run again with: swale solve " + record.case_file + " (swale " + version() + ").") +
                           "<pre class=\"case\" tabindex=\"0\">" + escaped_lines(record.case_text) + "</pre>\n";
    if (record.catalogue)
        verbatim += "<h3>Catalogue of belts that it names</h3>\n<pre class=\"case\" tabindex=\"0\">" +
                    escaped_lines(record.catalogue->text) + "</pre>\n";
    return cautions_section() + section("case", "The case file, verbatim", verbatim) + signatures_section();
}

std::string signatures_section() {
    return section("signatures", "Signed off",
                   "<table class=\"signatures\"><thead><tr><th scope=\"col\"></th><th scope=\"col\">Name</th><th "
                   "scope=\"col\">Date</th><th "
                   "scope=\"col\">Signature</th></tr></thead><tbody><tr><th "
                   "scope=\"row\">Prepared</th><td></td><td></td><td></td></tr><tr><th "
                   "scope=\"row\">Checked</th><td></td><td></td><td></td></tr></tbody></table>\n");
}

}  // namespace swale
