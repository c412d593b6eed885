#include "benchmarks/campaign/summary.h"

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <map>
#include <set>

namespace swale::benchmark {

namespace {

bool has_failed(const Record& record) {
    return record.outcome != "clean" && record.outcome != "warned";
}

double share(std::size_t part, std::size_t whole) {
    return 100.0 * static_cast<double>(part) / static_cast<double>(std::max<std::size_t>(1, whole));
}

void print_outcomes(const std::vector<Record>& records) {
    std::map<std::string, std::size_t> count;
    for (const Record& record : records) ++count[record.outcome];
    std::printf("| outcome | states | share |\n|---|---|---|\n");
    for (const auto& [outcome, states] : count)
        std::printf("| %s | %zu | %.1f %% |\n", outcome.c_str(), states, share(states, records.size()));
}

void print_kinds(const std::vector<Record>& records) {
    std::map<std::string, std::vector<int>> met;
    for (const Record& record : records)
        for (const std::string& kind : std::set<std::string>(record.kinds.begin(), record.kinds.end()))
            met[record.outcome + ", " + kind].push_back(record.index);
    std::printf("\n| kind | states | first cases |\n|---|---|---|\n");
    for (const auto& [kind, cases] : met) {
        std::printf("| %s | %zu |", kind.c_str(), cases.size());
        for (std::size_t k = 0; k < std::min<std::size_t>(8, cases.size()); ++k) std::printf(" %d", cases[k]);
        std::printf(" |\n");
    }
}

void print_worst(const char* name, const std::vector<Record>& records, double Record::*value) {
    const auto worst = std::max_element(records.begin(), records.end(), [&](const Record& a, const Record& b) {
        return std::abs(a.*value) < std::abs(b.*value);
    });
    std::printf("| %s | %.1e | %d %s |\n", name, (*worst).*value, worst->index, worst->state.c_str());
}

void print_failures(const std::vector<Record>& records) {
    std::printf("\n| case | state | N/mm | outcome | reason | what |\n|---|---|---|---|---|---|\n");
    for (const Record& r : records)
        if (has_failed(r)) {
            const std::string kind = r.kinds.empty() ? "" : r.kinds.front();
            std::printf("| %d | %s | %.3g | %s: %s | %s | %s |\n", r.index, r.state.c_str(), r.per_width, r.outcome.c_str(),
                        kind.c_str(), r.reason.c_str(), r.line.c_str());
        }
}

}  // namespace

void print_summary(const std::vector<Record>& records) {
    if (records.empty()) return;
    std::set<int> cases;
    for (const Record& record : records) cases.insert(record.index);
    std::printf("%zu cases, %zu states\n\n", cases.size(), records.size());
    print_outcomes(records);
    print_kinds(records);
    std::printf("\n| worst imbalance over tension + weight | value | case |\n|---|---|---|\n");
    print_worst("along", records, &Record::along);
    print_worst("across", records, &Record::across);
    print_worst("vertical", records, &Record::vertical);
    print_worst("roll force along its axis, over the force", records, &Record::axial);
    print_failures(records);
}

}  // namespace swale::benchmark
