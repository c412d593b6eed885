#include "io/result_files.h"
#include "tests/io/sample_run.h"

#include <cstdio>

/// Writes the sample run's files into the folder given, for readers other than ours.
int main(int count, char** arguments) {
    if (count != 2) return 2;
    try {
        swale::write_result_files(arguments[1], swale::sample_run());
    } catch (const std::exception& error) {
        std::fprintf(stderr, "%s\n", error.what());
        return 4;
    }
    return 0;
}
