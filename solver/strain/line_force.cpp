#include "solver/strain/line_force.h"

#include "mesh/quadrature.h"

#include <algorithm>

namespace swale {

namespace {

// By the Gauss rule that the rows of the span are the points of.
double mean(LineForce::const_iterator begin, LineForce::const_iterator end) {
    const int rows = static_cast<int>(end - begin);
    const LineRule rule = gauss_rule(CubicBasis({0, 1}), rows);
    double sum = 0;
    for (int k = 0; k < rows; ++k) sum += rule.points[k].weight * begin[k].second;
    return sum;
}

}  // namespace

LineForce resolved_line_force(const LineForce& rows, const CubicBasis& across, double longest) {
    LineForce resolved;
    for (auto begin = rows.begin(); begin != rows.end();) {
        const int span = across.span_of(begin->first);
        const auto end = std::find_if(begin, rows.end(), [&](const auto& row) { return across.span_of(row.first) != span; });
        const double from = across.breaks()[span], to = across.breaks()[span + 1];
        if (to - from <= longest)
            resolved.insert(resolved.end(), begin, end);
        else
            resolved.emplace_back((from + to) / 2, mean(begin, end));
        begin = end;
    }
    return resolved;
}

}  // namespace swale
