#include "io/screen_command.h"

#include "io/case_file.h"
#include "io/json_number.h"
#include "io/screening_json.h"
#include "io/terminal/belt_warnings.h"
#include "io/terminal/hand_methods_section.h"
#include "io/terminal/plain_text.h"
#include "io/text_file.h"
#include "solver/screening.h"

namespace swale {

namespace {

constexpr const char* cautions =
    "Hand methods err both ways: swale solve computes the belt. The belt maker's limits, local codes and a\n"
    "licensed engineer's judgement prevail.\n";

std::string as_json(const TransitionCase& transition, const Screening& screening) {
    nlohmann::ordered_json answer{{"title", transition.title}, {"hand_methods", hand_methods_json(screening)}};
    answer["neutral_lift_mm"] = json_number(screening.neutral_lift);
    answer["practice"] = screening.practice;
    answer["belt_warnings"] = transition.belt.warnings;
    return answer.dump(2, ' ', false, nlohmann::ordered_json::error_handler_t::replace) + "\n";
}

}  // namespace

int run_screen(const ScreenRequest& request, std::ostream& answer) {
    const TransitionCase transition = parse_case(read_text_file(request.case_file), request.case_file.string());
    const Screening screening = screen(transition);
    if (request.json)
        answer << as_json(transition, screening);
    else
        answer << wrapped(transition.title) << belt_warnings(transition.belt) << "\n"
               << hand_methods_table(transition, screening) << "\n"
               << hand_methods_remarks(screening) << "\n"
               << cautions;
    return 0;
}

}  // namespace swale
