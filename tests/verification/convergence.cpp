#include "tests/verification/convergence.h"

#include "tests/verification/reference.h"
#include "tests/verification/reference_table.h"

#include <cmath>

namespace swale::verification {

LinearLimit linear_limit(const std::string& problem, double tolerance, const std::string& why) {
    const ReferenceTable table = reference_table("linear_shells.csv").where("problem", problem).where("limit", "yes");
    const auto& row = table.rows.at(0);
    return {problem, row.at("quantity"), row.at("source"), std::stod(row.at("value")), tolerance, why};
}

Study study(const LinearLimit& limit, int points_per_span, const std::vector<int>& spans,
            const std::function<double(int)>& solve) {
    const std::string rule = std::to_string(points_per_span) + " x " + std::to_string(points_per_span) + " Gauss points a span";
    Study done{spans, {}, 0};
    std::vector<std::pair<double, double>> errors;  // over the size of a span
    for (const int n : spans) {
        done.values.push_back(solve(n));
        errors.emplace_back(1.0 / n, std::abs(done.values.back() / limit.value - 1));
    }
    draw({limit.problem + ", error of the grid", rule, "span/side", "relative error", errors, false, true});
    const auto [coarse, fine] = std::pair{errors[errors.size() - 2], errors.back()};
    done.order = std::log(coarse.second / fine.second) / std::log(coarse.first / fine.first);
    const std::string grid = std::to_string(spans.back()) + " x " + std::to_string(spans.back()) + " spans, order " +
                             std::to_string(done.order).substr(0, 4);
    check(limit.quantity + ", " + rule,
          {limit.value, "length", limit.source, Kind::other_method, grid, limit.tolerance, limit.why}, done.values.back());
    return done;
}

// v = v2 + (v2 - v1)/((n2/n1)^p - 1).
double extrapolated(const Study& study, double order) {
    const std::size_t last = study.values.size() - 1;
    const double ratio = static_cast<double>(study.spans[last]) / study.spans[last - 1];
    return study.values[last] + (study.values[last] - study.values[last - 1]) / (std::pow(ratio, order) - 1);
}

}  // namespace swale::verification
