#include "io/study_command.h"

#include "io/input_error.h"
#include "io/quantity.h"
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
#include <regex>

namespace swale {

namespace {

namespace fs = std::filesystem;
using Json = nlohmann::ordered_json;

fs::path journal_of(const fs::path& database) {
    return database.string() + ".journal";
}

Shard shard_of(const std::string& text) {
    static const std::regex form("([1-9][0-9]{0,4})/([1-9][0-9]{0,4})");
    std::smatch parts;
    if (text.empty()) return {};
    Shard shard;
    if (std::regex_match(text, parts, form)) shard = {std::stoi(parts[1]), std::stoi(parts[2])};
    if (parts.empty() || shard.number > shard.of)
        throw BadQuantity("--shard: given \"" + text + "\"; allowed: i/n with i from 1 to n, as in 2/8");
    return shard;
}

// What a journal must have been made from for its lines to be this study's. The shard may be another: each line names its case.
std::string header_of(const Study& study) {
    return Json{{"journal", "swale study"},
                {"format_version", 1},
                {"swale_version", version()},
                {"study_text", study.text},
                {"case_text", study.case_text}}
        .dump(-1, ' ', false, Json::error_handler_t::replace);
}

constexpr const char* why_other =
    "belongs to another study, another base case or another version of the program; nothing was changed. Choose another --out, "
    "or "
    "set this file and its database aside to begin anew";

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

std::string counts(const std::map<int, std::string>& records) {
    std::map<std::string, int> outcomes;
    for (const auto& entry : records) ++outcomes[outcome_of(Json::parse(entry.second))];
    std::vector<TextRow> rows{{"outcome", "cases"}};
    for (const auto& [outcome, count] : outcomes) rows.push_back({outcome, std::to_string(count)});
    return text_table(rows, "lr");
}

void write_database(const StudyPlan& plan, const std::map<int, std::string>& records, const fs::path& out,
                    std::ostream& answer) {
    write_whole_file(out, study_database(plan, records, out));
    answer << wrapped(plan.study().title) << fmt::format("{} of {} cases\n\n", records.size(), plan.size()) << counts(records)
           << "\n"
           << cautions << "\nDatabase in " << out.string() << "\n";
}

}  // namespace

int run_study_command(const StudyRequest& request, std::ostream& answer) {
    const Shard shard = shard_of(request.shard);
    const StudyPlan plan(read_study(request.study_file));
    Journal journal(journal_of(request.out), header_of(plan.study()), why_other);
    write_whole_file(request.out, study_database(plan, journal.lines(), request.out));  // so that no hour is lost for its place
    run_study(plan, shard, request.jobs, journal, terminal_listener());
    write_database(plan, journal.lines(), request.out, answer);
    return 0;
}

int run_merge(const MergeRequest& request, std::ostream& answer) {
    const StudyPlan plan(read_study(request.study_file));
    const std::string header = header_of(plan.study());
    std::map<int, std::string> records;
    for (const fs::path& shard : request.shards) {
        JournalText journal = read_journal(journal_of(shard));
        if (journal.header != header) throw FileError(journal_of(shard), why_other);
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
    write_database(plan, records, request.out, answer);
    return 0;
}

}  // namespace swale
