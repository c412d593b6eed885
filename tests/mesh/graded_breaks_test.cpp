#include "mesh/graded_breaks.h"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>

using namespace swale;

namespace {

bool holds(const std::vector<double>& breaks, double x) {
    return std::any_of(breaks.begin(), breaks.end(), [&](double b) { return std::abs(b - x) < 1e-12; });
}

double wanted_at(double x, double longest, const FinePlace& place) {
    return std::min(longest, place.size + place.growth * std::max(0.0, std::abs(x - place.position) - place.reach));
}

}  // namespace

TEST_CASE("graded breaks: without fine places all spans are equal and no longer than the longest") {
    const std::vector<double> breaks = graded_breaks(10, 110, 30, {}, {});
    REQUIRE(breaks.size() == 5);
    for (std::size_t k = 1; k < breaks.size(); ++k) CHECK(breaks[k] - breaks[k - 1] == doctest::Approx(25));
}

TEST_CASE("graded breaks: spans are as short as a place wants within its reach and grow away from it") {
    const FinePlace place{400, 8, 20, 0.5};
    const std::vector<double> breaks = graded_breaks(0, 1000, 80, {place}, {400});
    CHECK(breaks.front() == 0);
    CHECK(breaks.back() == 1000);
    double longest = 0;
    for (std::size_t k = 1; k < breaks.size(); ++k) {
        const double size = breaks[k] - breaks[k - 1], middle = (breaks[k] + breaks[k - 1]) / 2;
        CHECK(size > 0);
        // The integral of dx/h over a span is at most one, so its size is at most the largest h on it.
        CHECK(size <= std::max({wanted_at(breaks[k - 1], 80, place), wanted_at(breaks[k], 80, place)}) + 1e-6);
        if (std::abs(middle - 400) < 16) CHECK(size <= 8 + 1e-9);
        longest = std::max(longest, size);
    }
    CHECK(longest > 60);
}

TEST_CASE("graded breaks: every pinned place inside is a break and those outside are left out") {
    const std::vector<double> breaks = graded_breaks(0, 100, 30, {}, {73, 11.5, 0, 100, -4, 130, 11.5});
    CHECK(holds(breaks, 73));
    CHECK(holds(breaks, 11.5));
    CHECK(std::is_sorted(breaks.begin(), breaks.end(), std::less_equal<>()));
    CHECK(breaks.front() == 0);
    CHECK(breaks.back() == 100);
}
