#include "io/command_line.h"

#include "io/belts_command.h"
#include "io/chart_command.h"
#include "io/file_error.h"
#include "io/input_error.h"
#include "io/near_miss.h"
#include "io/quantity.h"
#include "io/ranges_command.h"
#include "io/report_command.h"
#include "io/screen_command.h"
#include "io/size_command.h"
#include "io/solve_command.h"
#include "io/spread_command.h"
#include "io/study_command.h"
#include "io/version.h"
#include "io/wear_command.h"
#include "materials/designation.h"

#include <CLI/CLI.hpp>
#include <algorithm>

namespace swale {
namespace {

constexpr int wrong_input = 2;
constexpr int fault = 4;

/// What the command line asks for.
struct Request {
    SolveRequest solve;
    BeltsRequest belts;
    ScreenRequest screen;
    SizeRequest size;
    StudyRequest study;
    MergeRequest merge;
    ChartRequest chart;
    RangesRequest ranges;
    SpreadRequest spread;
    ReportRequest report;
    WearRequest wear;
    std::string field_sheet;
    std::string out;
};

void add_solve(CLI::App& app, Request& request) {
    CLI::App* solve = app.add_subcommand("solve", "Solve every tension state of a case and judge it");
    solve->add_option("CASE", request.solve.case_file, "Case file (TOML)")->required();
    solve->add_option("--out", request.out, "Folder for the results; default <stem of CASE>-result");
    solve->add_flag("--json", request.solve.json, "Answer with summary.json on standard output");
}

void add_screen(CLI::App& app, Request& request) {
    CLI::App* screen = app.add_subcommand("screen", "The hand methods alone, side by side");
    screen->add_option("CASE", request.screen.case_file, "Case file (TOML)")->required();
    screen->add_flag("--json", request.screen.json, "Answer in JSON");
}

void add_size(CLI::App& app, Request& request) {
    CLI::App* size =
        app.add_subcommand("size", "The arrangement at which every limit holds: shortest distance, best lift, sets between");
    size->add_option("CASE", request.size.case_file, "Case file (TOML)")->required();
    size->add_option("--out", request.out, "Folder for the results; default <stem of CASE>-sized");
    size->add_option("--find", request.size.find, "distance (default), lift, idlers or all");
    size->add_option("--shortest", request.size.shortest, "Shortest distance allowed, \"1500 mm\"; default half a belt width");
    size->add_option("--longest", request.size.longest, "Longest distance allowed, \"6 m\"; default twelve belt widths");
    size->add_flag("--json", request.size.json, "Answer in JSON");
}

void add_spread(CLI::App& app, Request& request) {
    CLI::App* spread = app.add_subcommand("spread", "What tolerances do to the answer: how often a limit is exceeded");
    spread->add_option("CASE", request.spread.case_file, "Case file (TOML) with a table [tolerances]")->required();
    spread->add_option("--out", request.out, "Folder for the results; default <stem of CASE>-spread");
    spread->add_option("--samples", request.spread.samples, "Belts solved with numbers drawn at random, as a check; default 0")
        ->check(CLI::Range(0, 100000));
    spread->add_flag("--json", request.spread.json, "Answer with spread.json on standard output");
}

void add_study(CLI::App& app, Request& request) {
    CLI::App* study = app.add_subcommand("study", "Many cases, varied from one, into one database");
    study->add_option("STUDY", request.study.study_file, "Study file (TOML)")->required();
    study->add_option("--out", request.study.out, "The database, STUDY.h5; its report goes beside it, STUDY.html")->required();
    study->add_option("--jobs", request.study.jobs, "Cases solved at a time, 1 to 256; default 2")->check(CLI::Range(1, 256));
    study->add_option("--shard", request.study.shard, "A part of the cases: \"2/8\" is the second of eight");
}

void add_merge(CLI::App& app, Request& request) {
    CLI::App* merge = app.add_subcommand("merge", "One database of the shards of a study");
    merge->add_option("STUDY", request.merge.study_file, "Study file (TOML)")->required();
    merge->add_option("SHARD", request.merge.shards, "Databases of the shards, their journals beside them")->required();
    merge->add_option("--out", request.merge.out, "The database, STUDY.h5; its report goes beside it")->required();
}

void add_chart(CLI::App& app, Request& request) {
    CLI::App* chart = app.add_subcommand("chart", "Design charts of a study: required distance, and what the edge uses");
    chart->add_option("STUDY", request.chart.database, "The database of a study, STUDY.h5")->required();
    chart->add_option("--out", request.out, "Folder for the charts; default <stem of STUDY>-charts");
    chart->add_option("--distance", request.chart.axes.distance, "Axis of the study that is the distance");
    chart->add_option("--over", request.chart.axes.over, "Axis to the right of a chart; default the tension");
    chart->add_option("--lines", request.chart.axes.lines, "Axis of which each value is a line; default the trough angle");
    chart->add_option("--lift", request.chart.axes.lift, "Axis upwards in a map; default the pulley's lift");
    chart->add_option("--pictures", request.chart.pictures, "svg (default), png, pdf with commas between, or none");
}

void add_ranges(CLI::App& app, Request& request) {
    CLI::App* ranges = app.add_subcommand("ranges", "What the belt's uncertain numbers do to the answer");
    ranges->add_option("CASE", request.ranges.case_file, "Case file (TOML)")->required();
    ranges->add_option("--out", request.out, "Folder for the results; default <stem of CASE>-ranges");
    ranges->add_flag("--json", request.ranges.json, "Answer with ranges.json on standard output");
}

void add_report(CLI::App& app, Request& request) {
    CLI::App* report =
        app.add_subcommand("report", "The report and pictures of a stored result, or the report of a study, without solving");
    report->add_option("DIR", request.report.folder, "Folder of a result, or the database of a study, STUDY.h5")->required();
    report->add_option("--pictures", request.report.pictures, "Kinds of pictures: png,svg,pdf,glb (default: all) or none");
}

void add_belts(CLI::App& app, Request& request) {
    CLI::App* belts = app.add_subcommand("belts", "What the catalogue knows of belts and where each number comes from");
    belts->add_option("DESIGNATION", request.belts.designation, "A belt like \"EP 800/4 6+3\"");
    belts->add_option("--catalogue", request.belts.catalogue, "A file of your own belts, looked up first");
    belts->add_flag("--json", request.belts.json, "Answer in JSON");
}

void add_wear(CLI::App& app, Request& request) {
    CLI::App* wear = app.add_subcommand("wear", "What worn return rolls say of their belt");
    wear->add_option("SURVEY", request.wear.survey_file, "Survey file (TOML)");
    wear->add_option("--out", request.out, "Folder for the results; default <stem of SURVEY>-wear");
    wear->add_option("--field-sheet", request.field_sheet, "Write a printable sheet (HTML) to take a survey with");
    wear->add_flag("--json", request.wear.json, "Answer with wear.json on standard output");
}

/// No command, or a word in its place that is none. CLI11 would only call it required or unexpected.
std::string unknown_command(const CLI::App& app, const std::vector<std::string>& arguments) {
    if (!arguments.empty() && arguments.front().starts_with('-')) return {};
    std::vector<std::string> commands;
    for (const CLI::App* command : app.get_subcommands([](const CLI::App*) { return true; }))
        commands.push_back(command->get_name());
    const std::string available = "; available: " + listed(commands, false);
    if (arguments.empty()) return "a command is missing" + available;
    if (std::find(commands.begin(), commands.end(), arguments.front()) != commands.end()) return {};
    return "there is no command \"" + arguments.front() + "\"" + available;
}

int dispatch(const CLI::App& app, Request& request, std::ostream& out) {
    if (app.got_subcommand("belts")) return run_belts(request.belts, out);
    if (app.got_subcommand("report")) return run_report(request.report, out);
    if (app.got_subcommand("screen")) return run_screen(request.screen, out);
    if (!request.out.empty())
        request.solve.out = request.size.out = request.ranges.out = request.spread.out = request.wear.out = request.chart.out =
            request.out;
    if (!request.field_sheet.empty()) request.wear.sheet = request.field_sheet;
    if (app.got_subcommand("size")) return run_size(request.size, out);
    if (app.got_subcommand("study")) return run_study_command(request.study, out);
    if (app.got_subcommand("merge")) return run_merge(request.merge, out);
    if (app.got_subcommand("chart")) return run_chart(request.chart, out);
    if (app.got_subcommand("ranges")) return run_ranges(request.ranges, out);
    if (app.got_subcommand("spread")) return run_spread(request.spread, out);
    if (app.got_subcommand("wear")) return run_wear(request.wear, out);
    return run_solve(request.solve, out);
}

int complain(std::ostream& err, const std::string& message, int code) {
    err << "swale: " << message << "\n";
    return code;
}

/// Runs what was asked; every exception becomes a message and an exit code.
int run(const CLI::App& app, Request& request, std::ostream& out, std::ostream& err) {
    try {
        const int code = dispatch(app, request, out);
        return out.flush() ? code : complain(err, "standard output can't be written", fault);
    } catch (const InputErrors& errors) {
        err << errors.what() << "\n";
        return wrong_input;
    } catch (const BadQuantity& error) {
        return complain(err, error.what(), wrong_input);
    } catch (const BadDesignation& error) {
        return complain(err, error.what(), wrong_input);
    } catch (const FileError& error) {
        return complain(err, error.what(), fault);
    } catch (const std::exception& error) {
        return complain(err, std::string("a fault of the program: ") + error.what(), fault);
    }
}

}  // namespace

int run_command_line(const std::vector<std::string>& arguments, std::ostream& out, std::ostream& err) {
    Request request;
    CLI::App app("Strains in the transitions of a troughed belt conveyor", "swale");
    app.set_version_flag("--version", "swale " + version());
    app.require_subcommand(1);
    add_solve(app, request);
    add_screen(app, request);
    add_size(app, request);
    add_spread(app, request);
    add_study(app, request);
    add_merge(app, request);
    add_chart(app, request);
    add_ranges(app, request);
    add_report(app, request);
    add_belts(app, request);
    add_wear(app, request);
    const std::string unknown = unknown_command(app, arguments);
    if (!unknown.empty()) return complain(err, unknown, wrong_input);
    try {
        app.parse(std::vector<std::string>(arguments.rbegin(), arguments.rend()));
    } catch (const CLI::ParseError& error) {
        if (error.get_exit_code() == 0) return app.exit(error, out, err);
        return complain(err, std::string(error.what()) + "; see swale --help", wrong_input);
    }
    return run(app, request, out, err);
}

}  // namespace swale
