#include "io/pictures.h"
#include "io/result_files.h"
#include "io/whole_file.h"
#include "tests/io/sample_run.h"

#include <cstdio>

/// Writes the sample run's files and pictures into the folder given, for readers other than ours.
int main(int count, char** arguments) {
    if (count != 2) return 2;
    try {
        const swale::RunRecord record = swale::sample_run();
        swale::write_result_files(arguments[1], record);
        for (const swale::ResultFile& file : swale::pictures(record, swale::picture_kinds(), "2026-01-02T03:04:05Z"))
            swale::write_whole_file(std::filesystem::path(arguments[1]) / file.name, file.content);
    } catch (const std::exception& error) {
        std::fprintf(stderr, "%s\n", error.what());
        return 4;
    }
    return 0;
}
