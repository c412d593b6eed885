#include "io/result_files.h"

#include "io/belt_vtk.h"
#include "io/result_database.h"
#include "io/sample_csv.h"
#include "io/summary_json.h"
#include "io/whole_file.h"

#include <fmt/chrono.h>

#include <chrono>
#include <future>

namespace swale {

ResultFileList result_files(const RunRecord& record, const std::string& written_at) {
    auto database = std::async(std::launch::async, [&] { return result_database(record, written_at); });  // half of the work
    ResultFileList files = belt_vtk(record.result);
    files.push_back({"result.h5", database.get()});
    files.push_back({"along.csv", along_csv(record.result)});
    files.push_back({"across.csv", across_csv(record.result)});
    files.push_back({"case.toml", record.case_text});
    files.push_back({"summary.json", summary_json(record)});
    return files;
}

void write_result_files(const std::filesystem::path& folder, const RunRecord& record) {
    const auto now = std::chrono::floor<std::chrono::seconds>(std::chrono::system_clock::now());
    for (const ResultFile& file : result_files(record, fmt::format("{:%Y-%m-%dT%H:%M:%SZ}", now)))
        write_whole_file(folder / file.name, file.content);
}

}  // namespace swale
