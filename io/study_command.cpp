#include "io/study_command.h"

#include "io/belt_catalogue.h"
#include "io/input_error.h"
#include "io/quantity.h"
#include "io/report/study/study_report.h"
#include "io/study/study_database.h"
#include "io/study/study_run.h"
#include "io/terminal/cautions.h"
#include "io/terminal/plain_text.h"
#include "io/terminal/text_table.h"
#include "io/version.h"
#include "io/whole_file.h"

#include <fmt/format.h>
#include <unistd.h>
#include <nlohmann/json.hpp>

#include <cstdio>
#include <fstream>
#include <sstream>

namespace swale {

namespace {

namespace fs = std::filesystem;
using Json = nlohmann::ordered_json;

fs::path journal_of(const fs::path& database) {
    return database.string() + ".journal";
}

Shard shard_of(const std::string& text) {
    if (text.empty()) return {};
    std::istringstream stream(text);
    Shard shard{0, 0};
    char slash = 0, more = 0;
    stream >> shard.number >> slash >> shard.of;
    if (!stream || slash != '/' || stream >> more || shard.number < 1 || shard.number > shard.of)
        throw BadQuantity("--shard: given \"" + text + "\"; allowed: i/n with i from 1 to n, as in 2/8");
    return shard;
}

// What a journal must have been made from for its lines to be this study's. The shard may be another: each line names its case.
std::string header_of(const Study& study) {
    Json header{{"journal", "swale study"},
                {"format_version", 1},
                {"swale_version", version()},
                {"study_text", study.text},
                {"case_text", study.case_text}};
    if (const auto catalogue = named_catalogue(study.case_text, study.case_file.string()))
        header["catalogue_text"] = catalogue->text;
    return header.dump(-1, ' ', false, Json::error_handler_t::replace);
}

// What stands there and is no study's database is not written over.
void refuse_other_file(const fs::path& out) {
    if (fs::exists(out) && !is_study_database(out))
        throw BadQuantity(
            fmt::format("--out: given \"{}\", a file that is no database of a study; allowed: a new file or a study's database",
                        out.string()));
}

// Neither is a database that holds more than is at hand: one whose journal is gone, or a merged one.
void refuse_fuller_database(const fs::path& out, std::size_t at_hand) {
    if (!fs::exists(out)) return;
    const int there = read_study_head(out).rows;
    if (there > static_cast<int>(at_hand))
        throw BadQuantity(fmt::format(
            "--out: given \"{}\", a database of {} cases, of which its journal {} has {}; nothing was changed; allowed: a new "
            "file, or this one with its journal put back",
            out.string(), there, journal_of(out).string(), at_hand));
}

// Nor, by a merger, the database of another study.
void refuse_other_study(const fs::path& out, const Study& study) {
    if (!fs::exists(out)) return;
    const StudyHead there = read_study_head(out);
    if (there.study_text != study.text || there.case_text != study.case_text)
        throw BadQuantity(
            fmt::format("--out: given \"{}\", the database of another study or base case; nothing was changed; "
                        "allowed: a new file or this study's database",
                        out.string()));
}

// The report stands beside the database; a page of somebody else's is not written over.
void refuse_other_page(const fs::path& out) {
    const fs::path page = study_report_path(out);
    if (page == out)
        throw BadQuantity(
            fmt::format("--out: given \"{}\", the name of the report; allowed: another ending, such as .h5", out.string()));
    if (!fs::exists(page)) return;
    std::ifstream stream(page, std::ios::binary);
    std::string begin(2000, '\0');
    stream.read(begin.data(), static_cast<std::streamsize>(begin.size()));
    if (begin.find("name=\"generator\" content=\"swale ") == std::string::npos)
        throw BadQuantity(
            fmt::format("--out: the report would stand in \"{}\", which is no report of ours; given \"{}\"; "
                        "allowed: another name",
                        page.string(), out.string()));
}

constexpr const char* why_other =
    "belongs to another study, base case, catalogue or version of the program; nothing was changed. Choose another "
    "--out, or set this file and its database aside to begin anew";
constexpr const char* why_other_shard = "belongs to another study, base case, catalogue or version of the program";

StudyListener terminal_listener() {
    if (isatty(STDERR_FILENO) == 0) return {};
    return [](const StudyProgress& progress) {
        const double rate = progress.seconds > 0 ? progress.done_now / progress.seconds : 0;
        std::string line = fmt::format("\r\033[K{} of {}", progress.done, progress.all);
        if (rate > 0)
            line += fmt::format(" \u00B7 {:.2g} cases/s \u00B7 {:.0f} s left", rate, (progress.all - progress.done) / rate);
        std::fputs(progress.done == progress.all ? "\r\033[K" : line.c_str(), stderr);
    };
}

std::string outcome_of(const Json& record) {
    return record.at("status") == "solved" ? record.at("summary").at("verdict").get<std::string>()
                                           : record.at("status").get<std::string>();
}

/// How many cases came to it, and why the first of them that gives a reason.
struct Outcome {
    int count = 0;
    std::string reason;
};

std::map<std::string, Outcome> outcomes_of(const std::map<int, std::string>& records) {
    std::map<std::string, Outcome> outcomes;
    for (const auto& [number, line] : records) {
        const Json record = Json::parse(line);
        Outcome& outcome = outcomes[outcome_of(record)];
        const std::string reason = record.at("reason");
        if (outcome.reason.empty() && !reason.empty()) outcome.reason = fmt::format("case {}: {}", number, reason);
        ++outcome.count;
    }
    return outcomes;
}

std::string counts(const std::map<std::string, Outcome>& outcomes) {
    std::vector<TextRow> rows{{"outcome", "cases"}};
    std::string reasons;
    for (const auto& [name, outcome] : outcomes) {
        rows.push_back({name, std::to_string(outcome.count)});
        if (!outcome.reason.empty()) reasons += "  " + wrapped(name + ", " + outcome.reason, 4);
    }
    return text_table(rows, "lr") + (reasons.empty() ? "" : "\n" + reasons);
}

// Returns 2 if none of the cases could be read.
int write_database(const StudyPlan& plan, const std::map<int, std::string>& records, const fs::path& out,
                   std::ostream& answer) {
    write_whole_file(out, study_database(plan, records, out));
    write_whole_file(study_report_path(out), study_report_html(read_study_record(out)));
    const std::map<std::string, Outcome> outcomes = outcomes_of(records);
    answer << wrapped(plan.study().title) << fmt::format("{} of {} cases\n\n", records.size(), plan.size()) << counts(outcomes)
           << "\n"
           << cautions << fmt::format("\nDatabase in {}, report in {}\n", out.string(), study_report_path(out).string());
    return outcomes.size() == 1 && outcomes.contains("bad input") ? 2 : 0;
}

}  // namespace

int run_study_command(const StudyRequest& request, std::ostream& answer) {
    const Shard shard = shard_of(request.shard);
    const StudyPlan plan(read_study(request.study_file));
    refuse_other_file(request.out);
    refuse_other_page(request.out);
    if (!fs::exists(journal_of(request.out))) refuse_fuller_database(request.out, 0);
    Journal journal(journal_of(request.out), header_of(plan.study()), why_other);
    refuse_fuller_database(request.out, journal.lines().size());
    write_whole_file(request.out, study_database(plan, journal.lines(), request.out));  // so that no hour is lost for its place
    run_study(plan, shard, request.jobs, journal, terminal_listener());
    return write_database(plan, journal.lines(), request.out, answer);
}

int run_merge(const MergeRequest& request, std::ostream& answer) {
    const StudyPlan plan(read_study(request.study_file));
    refuse_other_file(request.out);
    refuse_other_page(request.out);
    refuse_other_study(request.out, plan.study());
    const std::string header = header_of(plan.study());
    std::map<int, std::string> records;
    for (const fs::path& shard : request.shards) {
        JournalText journal = read_journal(journal_of(shard));
        if (journal.header != header)
            throw InputErrors({{journal_of(shard).string(), 1, "", why_other_shard, "", "shards of this study as it stands"}});
        records.merge(journal.lines);
    }
    int missing = 0, first = 0;
    for (int number = plan.size(); number >= 1; --number)
        if (!records.contains(number)) ++missing, first = number;
    if (missing > 0)
        throw InputErrors(
            {{request.study_file.string(), 0, "",
              fmt::format("{} of {} cases are in none of the shards, case {} is the first", missing, plan.size(), first), "",
              "the shards of the whole study; run those that are missing again"}});
    return write_database(plan, records, request.out, answer);
}

}  // namespace swale
