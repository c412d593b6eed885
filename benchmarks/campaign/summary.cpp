#include "benchmarks/campaign/summary.h"

#include "solver/transition/sag.h"

#include <algorithm>
#include <array>
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

// Beside all states those that are plausibly taut: the sag of the longest free span is below a limit.
void print_outcomes(const std::vector<Record>& records) {
    std::map<std::string, std::array<std::size_t, 2>> count;
    std::size_t all_taut = 0;
    for (const Record& record : records) {
        const bool taut = record.sag <= slack_sag;
        ++count[record.outcome][0];
        count[record.outcome][1] += taut;
        all_taut += taut;
    }
    std::printf("| outcome | states | share | sag of every span below %.0f %% | share |\n|---|---|---|---|---|\n",
                100 * slack_sag);
    for (const auto& [outcome, states] : count)
        std::printf("| %s | %zu | %.1f %% | %zu | %.1f %% |\n", outcome.c_str(), states[0], share(states[0], records.size()),
                    states[1], share(states[1], all_taut));
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
    std::printf("\n| case | state | N/mm | sag / span | outcome | reason | what |\n|---|---|---|---|---|---|---|\n");
    for (const Record& r : records)
        if (has_failed(r)) {
            const std::string kind = r.kinds.empty() ? "" : r.kinds.front();
            std::printf("| %d | %s | %.3g | %.3f | %s: %s | %s | %s |\n", r.index, r.state.c_str(), r.per_width, r.sag,
                        r.outcome.c_str(), kind.c_str(), r.reason.c_str(), r.line.c_str());
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
