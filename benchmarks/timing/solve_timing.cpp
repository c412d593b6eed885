// Where the time of a shipped case goes: medians of five runs of reading, solving and writing in one process.

#include "io/case_file.h"
#include "io/result_files.h"
#include "io/run_record.h"
#include "solver/transition.h"

#include <algorithm>
#include <array>
#include <chrono>
#include <cstdio>
#include <filesystem>
#include <string>
#include <vector>

namespace {

using Clock = std::chrono::steady_clock;

double seconds_since(Clock::time_point begin) {
    return std::chrono::duration<double>(Clock::now() - begin).count();
}

double median(std::vector<double> values) {
    std::nth_element(values.begin(), values.begin() + values.size() / 2, values.end());
    return values[values.size() / 2];
}

constexpr std::array<const char*, 7> parts{"whole",         "solver (wall)", "shell assembly", "contact",
                                           "factorisation", "stability",     "output"};

std::array<double, 7> run_once(const std::filesystem::path& file) {
    const Clock::time_point begin = Clock::now();
    swale::RunRecord record;
    record.transition = swale::read_case(file);
    record.result = swale::solve_transition(record.transition);
    const Clock::time_point solved = Clock::now();
    const std::filesystem::path folder = std::filesystem::temp_directory_path() / "swale-timing";
    swale::write_result_files(folder, record);
    const double output = seconds_since(solved);
    std::filesystem::remove_all(folder);
    const swale::Cost& cost = record.result.cost;
    return {seconds_since(begin),   cost.seconds, cost.assembly_seconds, cost.contact_seconds, cost.factorisation_seconds,
            cost.stability_seconds, output};
}

}  // namespace

int main(int count, char** arguments) {
    for (int k = 1; k < count; ++k) {
        std::array<std::vector<double>, 7> samples;
        for (int run = 0; run < 5; ++run) {
            const auto once = run_once(arguments[k]);
            for (std::size_t part = 0; part < parts.size(); ++part) samples[part].push_back(once[part]);
        }
        std::printf("%s, medians of five runs in s (parts are sums over two threads)\n", arguments[k]);
        for (std::size_t part = 0; part < parts.size(); ++part)
            std::printf("  %-15s %.3f\n", parts[part], median(samples[part]));
    }
}
