#include "io/terminal_answer.h"

#include "io/terminal/belt_warnings.h"
#include "io/terminal/cautions.h"
#include "io/terminal/criteria_section.h"
#include "io/terminal/hand_methods_section.h"
#include "io/terminal/headline.h"
#include "io/terminal/notes.h"
#include "io/terminal/path_section.h"
#include "io/terminal/places_section.h"
#include "io/terminal/plain_text.h"
#include "io/terminal/supports_section.h"
#include "io/verdict.h"

#include <fmt/format.h>

namespace swale {

namespace {

std::string no_solution_section(const TransitionResult& result) {
    std::string text;
    for (const StateResult& state : result.states)
        if (!converged(state)) text += "  - " + wrapped(state.name + ": " + state.reason, 4);
    return text.empty() ? text : "No solution\n" + text;
}

std::string notes_section(const RunRecord& record) {
    std::string text = belt_warnings(record.transition.belt);
    for (const StateNote& note : state_notes(record.result)) text += "  - " + wrapped(note.state + ": " + note.sentence, 4);
    return text.empty() ? text : "Notes\n" + text;
}

std::string cost_line(const TransitionResult& result) {
    return fmt::format("{} full sets modelled; {} unknowns, {} Newton iterations, {} s\n", result.sets,
                       result.cost.degrees_of_freedom, result.cost.newton_iterations, significant(result.cost.seconds, 2));
}

}  // namespace

std::string terminal_answer(const RunRecord& record) {
    const TransitionResult& result = record.result;
    std::string text = wrapped(record.transition.title) + wrapped(headline(result, record.transition.belt.warnings));
    for (const std::string& section :
         {criteria_section(result), places_section(record), supports_section(result), path_section(result),
          hand_methods_section(record.transition, result), no_solution_section(result), not_judged_section(result),
          notes_section(record), cost_line(result) + cautions})
        if (!section.empty()) text += "\n" + section;
    return text;
}

}  // namespace swale
