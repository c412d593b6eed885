#include "io/ranges_command.h"

#include "io/case_file.h"
#include "io/input_error.h"
#include "io/progress.h"
#include "io/ranges_json.h"
#include "io/result_folder.h"
#include "io/terminal/belt_warnings.h"
#include "io/terminal/cautions.h"
#include "io/terminal/ranges_section.h"
#include "io/text_file.h"
#include "io/whole_file.h"

#include <algorithm>

namespace swale {

namespace {

void require_ranges(const TransitionCase& transition, const std::string& file) {
    if (!uncertain_data(transition.belt).empty()) return;
    throw InputErrors({{file, 0, "belt", "no number of this belt has a range", "",
                        "a designation whose numbers are not all measured (swale belts shows their ranges)"}});
}

bool all_solved(const StudiedRun& run) {
    return std::ranges::all_of(run.states, [](const StudiedState& state) { return state.readings.has_value(); });
}

int exit_code_of(const RangeStudy& study) {
    bool solved = all_solved(study.as_given), within = study.as_given.exceeded.empty();
    for (const StudiedDatum& datum : study.data)
        for (const StudiedRun* run : {&datum.low, &datum.high}) {
            solved = solved && all_solved(*run);
            within = within && run->exceeded.empty();
        }
    return !solved ? 3 : within ? 0 : 1;
}

}  // namespace

int run_ranges(const RangesRequest& request, std::ostream& answer) {
    const std::string file = request.case_file.string();
    const TransitionCase transition = parse_case(read_text_file(request.case_file), file);
    require_ranges(transition, file);
    const std::filesystem::path folder = request.out.value_or(request.case_file.stem().string() + "-ranges");
    prepare_result_folder(folder);
    const RangeStudy study = study_ranges(transition, terminal_progress());
    const std::string json = ranges_json(transition, study);
    write_whole_file(folder / "ranges.json", json);
    if (request.json)
        answer << json;
    else
        answer << ranges_section(transition, study) << belt_warnings(transition.belt) << "\n"
               << cautions << "\nResults in " << folder.string() << "\n";
    return exit_code_of(study);
}

}  // namespace swale
