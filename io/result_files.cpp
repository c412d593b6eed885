#include "io/result_files.h"

#include "io/belt_vtk.h"
#include "io/result_database.h"
#include "io/sample_csv.h"
#include "io/summary_json.h"
#include "io/whole_file.h"

#include <fmt/chrono.h>

#include <algorithm>
#include <chrono>
#include <future>

namespace swale {

namespace {

// Where case.toml finds it if its path was a bare name; another path leads nowhere from the result folder.
std::string beside_case(const CatalogueFile& catalogue) {
    const std::string name = std::filesystem::path(catalogue.file).filename().string();
    return name == "case.toml" || !name.ends_with(".toml") ? "catalogue.toml" : name;
}

}  // namespace

ResultFileList result_files(const RunRecord& record, const std::string& written_at, const std::vector<ReportSection>& more) {
    auto fields = std::async(std::launch::async, [&] {  // beside the page
        ResultFileList made = belt_vtk(record.result);
        made.push_back({"result.h5", result_database(record, written_at)});
        return made;
    });
    std::string page = report_html(record, more);
    ResultFileList files = fields.get();
    files.push_back({"along.csv", along_csv(record.result)});
    files.push_back({"across.csv", across_csv(record.result)});
    files.push_back({"case.toml", record.case_text});
    if (record.catalogue) files.push_back({beside_case(*record.catalogue), record.catalogue->text});
    files.push_back({"report.html", std::move(page)});
    files.push_back({"summary.json", summary_json(record)});
    return files;
}

namespace {

// A run with fewer states than the one before leaves no state of that one behind.
void remove_older_states(const std::filesystem::path& folder, const ResultFileList& written) {
    std::error_code unread;
    for (const auto& entry : std::filesystem::directory_iterator(folder / "vtk", unread)) {
        const std::filesystem::path name = std::filesystem::path("vtk") / entry.path().filename();
        const bool of_this_run =
            std::any_of(written.begin(), written.end(), [&](const ResultFile& file) { return file.name == name; });
        if (!of_this_run && name.filename().string().starts_with("state-")) std::filesystem::remove(entry.path(), unread);
    }
}

}  // namespace

void write_result_files(const std::filesystem::path& folder, const RunRecord& record, const std::vector<ReportSection>& more) {
    const auto now = std::chrono::floor<std::chrono::seconds>(std::chrono::system_clock::now());
    const ResultFileList files = result_files(record, fmt::format("{:%Y-%m-%dT%H:%M:%SZ}", now), more);
    for (const ResultFile& file : files) write_whole_file(folder / file.name, file.content);
    remove_older_states(folder, files);
}

}  // namespace swale
