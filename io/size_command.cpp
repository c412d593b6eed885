#include "io/size_command.h"

#include "io/as_built_command.h"
#include "io/case_file.h"
#include "io/input_error.h"
#include "io/progress.h"
#include "io/quantity.h"
#include "io/report/sizing_report.h"
#include "io/result_files.h"
#include "io/result_folder.h"
#include "io/run_record.h"
#include "io/size_json.h"
#include "io/size_table.h"
#include "io/sized_case.h"
#include "io/terminal/belt_warnings.h"
#include "io/terminal/cautions.h"
#include "io/terminal/plain_text.h"
#include "io/terminal/sizing_section.h"
#include "io/text_file.h"
#include "io/whole_file.h"

#include <fmt/format.h>

#include <algorithm>
#include <vector>

namespace swale {

namespace {

void take_length(const std::string& option, const std::string& given, double& length) {
    if (given.empty()) return;
    try {
        length = read_quantity(given, Kind::length);
    } catch (const BadQuantity& bad) {
        throw BadQuantity(fmt::format("{}: {}; given \"{}\"; allowed: a length like \"1500 mm\"", option, bad.what(), given));
    }
}

void take_aim(const std::string& given, SizingAim& aim) {
    if (given.empty()) return;
    const auto found = std::ranges::find(aim_words(), given);
    if (found == aim_words().end())
        throw BadQuantity(fmt::format("--find: unknown word; given \"{}\"; allowed: {}", given, fmt::join(aim_words(), ", ")));
    aim = static_cast<SizingAim>(found - aim_words().begin());
}

// The command line goes before the case file's table.
SizingBounds bounds_of(const SizeRequest& request, const std::string& text, const TransitionCase& given) {
    SizingBounds bounds = sizing_bounds(text, request.case_file.string(), given);
    take_length("--shortest", request.shortest, bounds.shortest);
    take_length("--longest", request.longest, bounds.longest);
    take_aim(request.find, bounds.aim);
    const bool keeps_distance = bounds.aim == SizingAim::lift || bounds.aim == SizingAim::idlers;
    if (keeps_distance && !(request.shortest.empty() && request.longest.empty()))
        throw BadQuantity(
            fmt::format("--shortest and --longest bound a distance, and {} keeps the case's; allowed: without them",
                        aim_words()[static_cast<std::size_t>(bounds.aim)]));
    if (bounds.shortest >= bounds.longest)
        throw BadQuantity(
            fmt::format("--shortest of {:.0f} mm is not below --longest of {:.0f} mm", bounds.shortest, bounds.longest));
    return bounds;
}

// The best arrangement, or the one that comes nearest, as a case and its results.
RunRecord record_of(const Sizing& sizing, const SizeRequest& request, const std::string& text, const TransitionCase& given) {
    RunRecord record;
    const TransitionLayout& found = sizing.arrangements.front().transition.layout;
    record.case_file = request.case_file.string();
    record.case_text = with_arrangement(text, given.layout, found);
    record.transition = parse_case(record.case_text, record.case_file);
    record.catalogue = named_catalogue(record.case_text, record.case_file);
    record.result = sizing.result;
    return record;
}

}  // namespace

int run_size(const SizeRequest& request, std::ostream& answer) {
    const std::string text = read_text_file(request.case_file);
    const TransitionCase given = parse_case(text, request.case_file.string());
    const SizingBounds bounds = bounds_of(request, text, given);
    if (given.drawn) return run_as_built(request, text, given, bounds, answer);
    const std::filesystem::path folder = request.out.value_or(request.case_file.stem().string() + "-sized");
    refuse_own_case(folder, request.case_file);
    prepare_result_folder(folder);
    const Sizing sizing = size_transition(given, bounds, terminal_progress());
    write_whole_file(folder / "sizing.json", size_json(sizing, bounds, given.title));
    write_result_files(folder, record_of(sizing, request, text, given), {sizing_report(sizing, bounds)});
    if (request.json)
        answer << size_json(sizing, bounds, given.title);
    else
        answer << wrapped(given.title) << wrapped(sizing_headline(sizing, bounds)) << belt_warnings(given.belt) << "\n"
               << sizing_tables(sizing, bounds) << "\n"
               << cautions << "\nResults in " << folder.string()
               << (sizing.best ? "; case.toml there is the sized case\n" : "; case.toml there is what comes nearest\n");
    return sizing.best ? 0 : 1;
}

}  // namespace swale
