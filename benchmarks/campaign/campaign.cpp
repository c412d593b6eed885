// Random plausible transitions, solved and checked one by one.
//
//   swale_campaign COUNT SEED [--from K] [--jobs N] [--csv FILE]   cases K .. COUNT-1, those not yet in FILE; then the summary
//   swale_campaign COUNT SEED --case K [--course 1]                case K with everything, to be pasted and looked into
//   --accuracy P   wanted in per cent, 10 unless given; 50 leaves it at one halving of the coarse grid, at half the cost

#include "benchmarks/arguments.h"
#include "benchmarks/campaign/one_case.h"
#include "benchmarks/campaign/outcome.h"
#include "benchmarks/campaign/random_case.h"
#include "benchmarks/campaign/summary.h"
#include "benchmarks/in_parallel.h"
#include "benchmarks/keep_memory.h"

#include <cstdio>
#include <fstream>
#include <mutex>
#include <set>

namespace {

using namespace swale::benchmark;

// Cases that are wanted and not in the file yet.
std::vector<int> left_over(int from, int count, const std::string& file) {
    std::set<int> done;
    for (const Record& record : read_records(file)) done.insert(record.index);
    std::vector<int> left;
    for (const int index : numbers(from, count))
        if (!done.contains(index)) left.push_back(index);
    return left;
}

void append(std::ofstream& csv, const std::vector<Record>& records) {
    for (const Record& record : records) {
        csv << csv_line(record) << '\n';
        std::fprintf(stderr, "%4d %-5s %-13s %5.1f s  %s\n", record.index, record.state.c_str(), record.outcome.c_str(),
                     record.seconds, record.line.c_str());
    }
    csv.flush();
}

// What is asked here is whether a state is solved; how exactly is asked by the error study.
swale::TransitionCase wanted_case(const Arguments& arguments, int index) {
    swale::TransitionCase transition = random_case(arguments.plain(1, 1), index);
    transition.settings.accuracy = arguments.option("accuracy", 10) / 100.0;
    return transition;
}

void run(const std::vector<int>& cases, const Arguments& arguments, const std::string& file) {
    const bool fresh = read_records(file).empty();
    std::ofstream csv(file, std::ios::app);
    if (fresh) csv << csv_header() << '\n';
    std::mutex writing;
    in_parallel(cases, arguments.option("jobs", 2), [&](int index) {
        const std::vector<Record> records = judge_case(wanted_case(arguments, index), index);
        const std::lock_guard lock(writing);
        append(csv, records);
    });
}

}  // namespace

int main(int argument_count, char** values) {
    keep_memory();
    const Arguments arguments(argument_count, values);
    const int count = arguments.plain(0, 100), seed = arguments.plain(1, 1), one = arguments.option("case", -1);
    if (one >= 0) {
        print_one_case(wanted_case(arguments, one), one, arguments.option("course", 0) != 0);
        return 0;
    }
    const std::string file = arguments.option("csv", "campaign-" + std::to_string(seed) + ".csv");
    run(left_over(arguments.option("from", 0), count, file), arguments, file);
    print_summary(read_records(file));
}
