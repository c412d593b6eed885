#include "io/report_command.h"

#include "io/file_error.h"
#include "io/pictures.h"
#include "io/quantity.h"
#include "io/report/report.h"
#include "io/report/sizing_report.h"
#include "io/report/study/study_report.h"
#include "io/stored_result.h"
#include "io/stored_sizing.h"
#include "io/terminal/cautions.h"
#include "io/terminal/headline.h"
#include "io/terminal/plain_text.h"
#include "io/verdict.h"
#include "io/version.h"
#include "io/whole_file.h"

#include <fmt/format.h>

#include <algorithm>
#include <sstream>

namespace swale {

namespace {

std::set<std::string> kinds_of(const std::string& list) {
    std::set<std::string> kinds;
    std::istringstream words(list);
    for (std::string word; std::getline(words, word, ',');) {
        if (!picture_kinds().contains(word) && list != "none")
            throw BadQuantity(fmt::format(
                "--pictures: no kind of picture; given \"{}\"; allowed: png, svg, pdf, glb with commas between, or none",
                word));
        kinds.insert(word);
    }
    if (kinds.empty()) throw BadQuantity("--pictures: empty; allowed: png, svg, pdf, glb with commas between, or none");
    return kinds;
}

/// What `size` adds on its search, of a folder that it made.
std::vector<ReportSection> sections_of(const std::filesystem::path& folder, const StoredResult& stored) {
    const auto search = read_stored_sizing(folder, stored.record.transition);
    if (!search) return {};
    return {sizing_report(search->sizing, search->bounds)};
}

/// Of the kinds written anew, those of states that the run has not.
void remove_older_pictures(const std::filesystem::path& folder, const std::set<std::string>& kinds,
                           const ResultFileList& written) {
    std::error_code unread;
    for (const auto& entry : std::filesystem::directory_iterator(folder / "pictures", unread)) {
        const std::filesystem::path name = std::filesystem::path("pictures") / entry.path().filename();
        const std::string kind = name.extension().string();
        const bool ours = name.filename().string().starts_with("state-") && !kind.empty() && kinds.contains(kind.substr(1));
        if (ours && std::ranges::find(written, name, &ResultFile::name) == written.end())
            std::filesystem::remove(entry.path(), unread);
    }
}

int report_study(const std::filesystem::path& database, std::ostream& answer) {
    const StudyRecord record = read_study_record(database);
    const std::filesystem::path page = study_report_path(database);
    if (page == database) throw FileError(database, "has the name of its report; give the database another");
    write_whole_file(page, study_report_html(record));
    answer << wrapped(record.table.title) << fmt::format("{} of {} cases\n\n", record.cases.size(), record.planned) << cautions
           << fmt::format("\nReport in {}; swale chart draws all charts and maps\n", page.string());
    return 0;
}

}  // namespace

int run_report(const ReportRequest& request, std::ostream& answer) {
    if (is_study_database(request.folder)) return report_study(request.folder, answer);
    const std::set<std::string> kinds = kinds_of(request.pictures);
    const StoredResult stored = read_result_folder(request.folder);
    ResultFileList files = pictures(stored.record, kinds, stored.written_at);
    files.push_back({"report.html", report_html(stored.record, sections_of(request.folder, stored))});
    for (const ResultFile& file : files) write_whole_file(request.folder / file.name, file.content);
    remove_older_pictures(request.folder, kinds, files);
    answer << wrapped(stored.record.transition.title) << wrapped(headline(stored.record.result)) << "\n"
           << fmt::format("Solved by swale {} at {}, reported by {}.\n", stored.swale_version, stored.written_at, version())
           << cautions
           << fmt::format("\n{} in {}{}\n", kinds.contains("none") ? "report.html" : "report.html and pictures",
                          request.folder.string(),
                          kinds.contains("none") ? "" : fmt::format(" ({} files in pictures/)", files.size() - 1));
    return exit_code(stored.record.result);
}

}  // namespace swale
