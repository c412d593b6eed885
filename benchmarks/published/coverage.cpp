#include "benchmarks/published/coverage.h"

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <limits>

namespace swale::benchmark {

namespace {

using Covered = Comparison::Covered;

double quantile(std::vector<double> values, double share) {
    if (values.empty()) return std::numeric_limits<double>::quiet_NaN();
    std::sort(values.begin(), values.end());
    return values[static_cast<std::size_t>(share * static_cast<double>(values.size() - 1) + 0.5)];
}

// Ratios of estimate to error where the reference resolves the error.
std::vector<double> ratios(const std::vector<Comparison>& comparisons) {
    std::vector<double> found;
    for (const Comparison& c : comparisons)
        if (c.resolved()) found.push_back(c.ratio());
    return found;
}

double worst_relative(const std::vector<Comparison>& comparisons) {
    double worst = 0;
    for (const Comparison& c : comparisons) worst = std::max(worst, std::abs(c.error / c.value));
    return 100 * worst;
}

void print_row(const char* name, const std::vector<Comparison>& comparisons) {
    const auto count = [&](Covered wanted) {
        return std::count_if(comparisons.begin(), comparisons.end(),
                             [&](const Comparison& c) { return c.covered() == wanted; });
    };
    const auto yes = count(Covered::yes), no = count(Covered::no), open = count(Covered::open);
    const std::vector<double> r = ratios(comparisons);
    std::printf("| %s | %zu | %td | %td | %td | %.0f %% | %zu | %.2f | %.2f | %.2f | %.2f %% |\n", name, comparisons.size(),
                yes, no, open, 100.0 * static_cast<double>(yes) / static_cast<double>(std::max<std::ptrdiff_t>(1, yes + no)),
                r.size(), quantile(r, 0.1), quantile(r, 0.5), quantile(r, 0.9), worst_relative(comparisons));
}

}  // namespace

Covered Comparison::covered() const {
    if (error <= estimate) return Covered::yes;
    return error - floor > estimate ? Covered::no : Covered::open;
}

const char* word(Covered covered) {
    return covered == Covered::yes ? "yes" : covered == Covered::no ? "NO" : "open";
}

void Coverage::print() const {
    std::printf(
        "\n| quantity | readings | covered | not | open | coverage | resolved | ratio 10 %% | median | 90 %% | worst error |\n"
        "|---|---|---|---|---|---|---|---|---|---|---|\n");
    std::vector<Comparison> together;
    for (std::size_t k = 0; k < reading_count; ++k) {
        print_row(reading_names[k], all_[k]);
        together.insert(together.end(), all_[k].begin(), all_[k].end());
    }
    print_row("all", together);
    std::printf(
        "\nThe error is the distance from the reference, the floor the reference's own estimate. Covered: error <= estimate. "
        "Open: above the estimate by less than the floor (not counted in the coverage). Ratios estimate / error where the "
        "error "
        "is above the floor; their 10 %%, 50 %% and 90 %% quantiles. Worst error over the value.\n");
}

}  // namespace swale::benchmark
