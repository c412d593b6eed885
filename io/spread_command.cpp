#include "io/spread_command.h"

#include "io/case_file.h"
#include "io/progress.h"
#include "io/result_folder.h"
#include "io/size_table.h"
#include "io/spread_json.h"
#include "io/terminal/belt_warnings.h"
#include "io/terminal/cautions.h"
#include "io/terminal/plain_text.h"
#include "io/terminal/spread_section.h"
#include "io/text_file.h"
#include "io/tolerances_table.h"
#include "io/whole_file.h"

#include <algorithm>

namespace swale {

namespace {

constexpr int too_often = 1, no_solution = 3;

bool within(const ToleranceSpread& spread, double wanted) {
    return std::ranges::all_of(spread.criteria, [&](const CriterionSpread& one) { return one.exceeds <= wanted; });
}

}  // namespace

int run_spread(const SpreadRequest& request, std::ostream& answer) {
    const std::string text = read_text_file(request.case_file), file = request.case_file.string();
    const TransitionCase given = parse_case(text, file);
    const Tolerances tolerances = tolerances_of(text, file);
    const std::filesystem::path folder = request.out.value_or(request.case_file.stem().string() + "-spread");
    prepare_result_folder(folder);
    const ToleranceSpread spread =
        spread_of(given, tolerances, sizing_bounds(text, file, given), request.samples, terminal_progress());
    const std::string json = spread_json(spread, tolerances, given.title);
    write_whole_file(folder / "spread.json", json);
    write_whole_file(folder / "case.toml", text);
    if (request.json)
        answer << json;
    else
        answer << wrapped(given.title) << wrapped(spread_headline(spread, tolerances)) << belt_warnings(given.belt) << "\n"
               << spread_tables(spread) << "\n"
               << cautions << "\nResults in " << folder.string() << "\n";
    if (!spread.why_none.empty()) return no_solution;
    return within(spread, tolerances.exceed) ? 0 : too_often;
}

}  // namespace swale
