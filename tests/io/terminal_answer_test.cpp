#include "io/terminal_answer.h"

#include "io/terminal/plain_text.h"
#include "io/terminal/text_table.h"
#include "tests/io/sample_run.h"

#include <doctest/doctest.h>

#include <algorithm>

using namespace swale;

namespace {

/// Wherever lines were broken.
bool says(std::string text, const std::string& part) {
    std::replace(text.begin(), text.end(), '\n', ' ');
    return text.find(part) != std::string::npos;
}

bool holds(const std::string& text, const std::string& part) {
    return text.find(part) != std::string::npos;
}

RunRecord solved_run() {
    RunRecord record = sample_run();
    record.result.states.pop_back();
    std::erase_if(record.result.criteria, [](const Judgement& entry) { return entry.state != "running full"; });
    return record;
}

}  // namespace

TEST_CASE("terminal answer: the verdict stands in the second line in a sentence with both numbers") {
    RunRecord record = solved_run();
    CHECK(holds(terminal_answer(record), "tail transition\nWITHIN LIMITS: "));
    CHECK(says(terminal_answer(record), "Warning: edge strain in \"running full\" is 0.840 %, limit 0.800 %"));
    record.result.criteria[0].passed = false;
    record.result.criteria[0].value = 1.3;
    CHECK(
        holds(terminal_answer(record), "tail transition\nOVER A LIMIT: edge tension in \"running full\" is 1.30, limit 1.15"));
}

TEST_CASE("terminal answer: the headline counts what the notes warn of in the belt's data and in the states") {
    RunRecord record = solved_run();
    record.result.states[0].notes.clear();
    CHECK_FALSE(says(terminal_answer(record), "Warnings under the notes"));
    record.transition.belt.warnings = {"mass contradicts thickness", "modulus contradicts elongation"};
    record.result.states[0].notes = {"a remark"};
    CHECK(says(terminal_answer(record), "Warnings under the notes: 2 of the belt's data. "));
    record.result.states[0].notes.push_back("warning: the load fills 130 % of the cross-section of ISO 5048; it spills");
    record.result.states.push_back(record.result.states[0]);
    CHECK(says(terminal_answer(record), "Warnings under the notes: 2 of the belt's data, 1 of the states. "));
}

TEST_CASE("terminal answer: a state without a solution is named with its reason and the others are delivered") {
    const std::string text = terminal_answer(sample_run());
    CHECK(says(text, "NOT CONVERGED: no solution for \"starting, \"wet\"\" (1 of 2 states)"));
    CHECK(holds(text, "residual 3.1e-4 > 1e-8 after 60 iterations, tension 62 kN"));
    CHECK(holds(text, "0.840"));
}

TEST_CASE("terminal answer: says what was not judged and why") {
    CHECK(holds(terminal_answer(sample_run()), "junction strain: no published limit is known"));
}

TEST_CASE("terminal answer: a state's own limit stands beside its value") {
    RunRecord record = solved_run();
    record.result.states.push_back(record.result.states[0]);
    record.result.states[1].name = "starting";
    record.result.criteria.push_back(record.result.criteria[0]);
    record.result.criteria.back().state = "starting";
    CHECK(holds(terminal_answer(record), "<= 1.15"));
    record.result.criteria.back().limit = 1.5;
    record.result.criteria.back().utilisation = 0.56;
    const std::string text = terminal_answer(record);
    CHECK(holds(text, "<= its own"));
    CHECK(holds(text, "0.840 of 1.15 (73%)"));
    CHECK(holds(text, "0.840 of 1.50 (56%)"));
}

TEST_CASE("terminal answer: a roll's force is in kN and the headline names the roll that is over its rating") {
    RunRecord record = solved_run();
    Judgement& force = record.result.criteria.back();
    CHECK(holds(terminal_answer(record), "1.22 (30%)"));
    CHECK(holds(terminal_answer(record), "roll force [kN]"));
    force.value = 5000;
    force.utilisation = 1.25;
    force.passed = false;
    CHECK(says(terminal_answer(record),
               "roll force in \"running full\" is 5.00 kN at set 1 wing +y, limit 4.00 kN (125 % used)"));
}

TEST_CASE("terminal answer: a tension path has a line for each tension and says where an eigenvalue vanishes") {
    RunRecord record = solved_run();
    CHECK(!holds(terminal_answer(record), "As the tension falls"));
    TensionPathRow solved, unsolved;
    solved.tension = 40e3;
    solved.converged = true;
    solved.edge_strain_max.value = 0.009;
    solved.eigenvalue_symmetric = 2e-5;
    unsolved.tension = 20e3;
    record.result.path = {{solved, unsolved}, 25e3, {}};
    const std::string text = terminal_answer(record);
    CHECK(says(text, "The eigenvalue becomes zero: symmetric at 25.0 kN, antisymmetric at none of them."));
    CHECK(says(text, "0.900"));
    CHECK(says(text, "no solution"));
}

TEST_CASE("terminal answer: what has no limit is told in one line") {
    RunRecord record = solved_run();
    for (const char* name : {"one", "another"})
        record.result.criteria.push_back({name, "running full", 1, {}, "mm", {}, {}, false, "", {}, {}});
    CHECK(says(terminal_answer(record), "one, another: no limit given"));
}

TEST_CASE("terminal answer: places are in mm from the pulley and half a model stands for both edges") {
    RunRecord record = solved_run();
    CHECK(holds(terminal_answer(record), "both edges"));
    CHECK(says(terminal_answer(record), "190 mm before the first full set"));
    record.transition.settings.model = Symmetry::full;
    CHECK(holds(terminal_answer(record), "edge -y"));
}

TEST_CASE("terminal answer: no line is longer than 100 characters however many states and however long their names") {
    RunRecord record = sample_run();
    for (int i = 0; i < 7; ++i) {
        record.result.states.push_back(record.result.states[0]);
        record.result.states.back().name = "überlange Bezeichnung eines Zustands " + std::to_string(i);
        record.result.states.back().notes = {std::string(300, 'x')};
    }
    CHECK(widest_line(terminal_answer(record)) <= line_length);
}

TEST_CASE("terminal answer: control characters of a name don't reach the terminal") {
    RunRecord record = sample_run();
    record.transition.title = "red \x1b[31m title";
    record.result.states[0].name = "a\x1b[2Jb";
    record.result.criteria[0].name = "c\rd";
    const std::string text = terminal_answer(record);
    CHECK(!holds(text, "\x1b"));
    CHECK(!holds(text, "\r"));
}

TEST_CASE("terminal answer: a run without any solution still says so") {
    RunRecord record = sample_run();
    record.result.states.erase(record.result.states.begin());
    CHECK(holds(terminal_answer(record), "NOT CONVERGED: no solution for \"starting, \"wet\"\" (1 of 1 states)."));
}
