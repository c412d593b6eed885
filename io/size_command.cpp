#include "io/size_command.h"

#include "io/case_file.h"
#include "io/input_error.h"
#include "io/json_number.h"
#include "io/progress.h"
#include "io/quantity.h"
#include "io/result_files.h"
#include "io/result_folder.h"
#include "io/run_record.h"
#include "io/sized_case.h"
#include "io/terminal/belt_warnings.h"
#include "io/terminal/cautions.h"
#include "io/terminal/plain_text.h"
#include "io/terminal/text_table.h"
#include "io/text_file.h"
#include "io/whole_file.h"
#include "solver/sizing.h"
#include "solver/transition.h"

#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include <optional>
#include <utility>

namespace swale {

namespace {

using Json = nlohmann::ordered_json;

constexpr double shortest_in_widths = 0.5, longest_in_widths = 12;

/// The case being sized, and the run of the shortest distance that passed so far.
struct Trials {
    std::string file, text;
    ProgressListener progress;
    std::optional<RunRecord> shortest = {};

    RunRecord solved(double distance) const {
        RunRecord record;
        record.case_file = file;
        record.case_text = with_distance(text, distance);
        record.transition = parse_case(record.case_text, file);
        record.catalogue = named_catalogue(record.case_text, file);
        record.result = solve_transition(record.transition, progress);
        return record;
    }

    // A distance at which rolls would stand in each other is none.
    SizingStep step(double distance) {
        try {
            RunRecord record = solved(distance);
            const SizingStep step = sizing_step(distance, record.result);
            if (step.passed && (!shortest || distance < shortest->transition.layout.distance)) shortest = std::move(record);
            return step;
        } catch (const InputErrors& errors) {
            return {distance, false, -1, errors.errors().front().problem};
        }
    }
};

double bound(const std::string& option, const std::string& given, double default_length) {
    if (given.empty()) return default_length;
    try {
        return read_quantity(given, Kind::length);
    } catch (const BadQuantity& bad) {
        throw BadQuantity(fmt::format("{}: {}; given \"{}\"; allowed: a length like \"1500 mm\"", option, bad.what(), given));
    }
}

std::string history_text(const Sizing& sizing, double width) {
    std::vector<TextRow> rows{{"Tried [mm]", "widths", "", "headroom [%]", "nearest limit"}};
    for (const SizingStep& step : sizing.steps)
        rows.push_back({fmt::format("{:.0f}", step.distance), fmt::format("{:.2f}", step.distance / width),
                        step.passed ? "passes" : "fails", significant(100 * step.headroom), shortened(step.binding, 60)});
    return text_table(rows, "rrlrl");
}

std::string history_json(const Sizing& sizing, const std::string& title) {
    Json steps = Json::array();
    for (const SizingStep& step : sizing.steps)
        steps.push_back({{"distance_mm", step.distance},
                         {"passed", step.passed},
                         {"headroom", json_number(step.headroom)},
                         {"binding", step.binding}});
    Json answer{{"title", title}, {"distance_mm", json_number(sizing.distance)}, {"reason", sizing.reason}, {"steps", steps}};
    return answer.dump(2, ' ', false, Json::error_handler_t::replace) + "\n";
}

std::string headline(const Sizing& sizing, double width) {
    if (!sizing.distance) return "NO DISTANCE PASSES: " + sizing.reason;
    return fmt::format(
        "SHORTEST DISTANCE: {:.0f} mm, {:.2f} belt widths; {}; {:.2g} % of it is left beyond the estimated error",
        *sizing.distance, *sizing.distance / width, sizing.reason, 100 * sizing.step_at(*sizing.distance).headroom);
}

}  // namespace

int run_size(const SizeRequest& request, std::ostream& answer) {
    const std::string text = read_text_file(request.case_file);
    const TransitionCase given = parse_case(text, request.case_file.string());
    const double width = given.belt.width;
    Trials trials{request.case_file.string(), text, terminal_progress()};
    const SizingBounds bounds{bound("--shortest", request.shortest, shortest_in_widths * width),
                              bound("--longest", request.longest, longest_in_widths * width), given.layout.distance};
    if (bounds.shortest >= bounds.longest)
        throw BadQuantity(
            fmt::format("--shortest of {:.0f} mm is not below --longest of {:.0f} mm", bounds.shortest, bounds.longest));
    const std::filesystem::path folder = request.out.value_or(request.case_file.stem().string() + "-sized");
    prepare_result_folder(folder);
    const Sizing sizing = shortest_distance(bounds, [&](double distance) { return trials.step(distance); });
    write_whole_file(folder / "sizing.json", history_json(sizing, given.title));
    if (trials.shortest) write_result_files(folder, *trials.shortest);  // case.toml there is the sized case
    if (request.json)
        answer << history_json(sizing, given.title);
    else
        answer << wrapped(given.title) << wrapped(headline(sizing, width)) << belt_warnings(given.belt) << "\n"
               << history_text(sizing, width) << "\n"
               << cautions << "\nResults in " << folder.string()
               << (sizing.distance ? "; case.toml there is the sized case\n" : "\n");
    return sizing.distance ? 0 : 1;
}

}  // namespace swale
