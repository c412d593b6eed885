#include "solver/strain/line_force.h"

#include "mesh/quadrature.h"

#include <algorithm>

namespace swale {

namespace {

// The force up to a place, as if that of every row were spread evenly over the row's weight.
class Sum {
  public:
    explicit Sum(double begin) : ends_{begin}, sums_{0} {}

    void add(double width, double force) {
        ends_.push_back(ends_.back() + width);
        sums_.push_back(sums_.back() + force);
    }

    const std::vector<double>& ends() const { return ends_; }

    double up_to(double y) const {
        if (y <= ends_.front()) return 0;
        if (y >= ends_.back()) return sums_.back();
        const auto k = std::upper_bound(ends_.begin(), ends_.end(), y) - ends_.begin();
        return sums_[k - 1] + (sums_[k] - sums_[k - 1]) * (y - ends_[k - 1]) / (ends_[k] - ends_[k - 1]);
    }

  private:
    std::vector<double> ends_, sums_;
};

Sum summed(const LineForce& rows, const CubicBasis& across, double longest_span) {
    Sum sum(across.breaks()[across.span_of(rows.front().first)]);
    for (auto row = rows.begin(); row != rows.end();) {
        const int span = across.span_of(row->first);
        const double length = across.breaks()[span + 1] - across.breaks()[span];
        const auto end = std::find_if(row, rows.end(), [&](const auto& r) { return across.span_of(r.first) != span; });
        const LineRule rule = gauss_rule(CubicBasis({0, length}), static_cast<int>(end - row));
        double whole = 0;
        for (const LinePoint& point : rule.points) {
            const double force = point.weight * (row++)->second;
            if (length <= longest_span) sum.add(point.weight, force);
            whole += force;
        }
        if (length > longest_span) sum.add(length, whole);
    }
    return sum;
}

}  // namespace

LineForcePeak largest_line_force(const LineForce& rows, const CubicBasis& across, const LineForceResolution& resolution) {
    LineForcePeak peak;
    if (rows.empty()) return peak;
    const Sum sum = summed(rows, across, resolution.longest_span);
    const double first = sum.ends().front(), last = sum.ends().back();
    const double width = std::clamp(resolution.width, 1e-6, last - first);
    // A strip's force is linear in its place while neither of its borders crosses an end of the rows.
    for (const double end : sum.ends())
        for (const double wanted : {end, end - width}) {
            const double begin = std::clamp(wanted, first, last - width);
            const double force = (sum.up_to(begin + width) - sum.up_to(begin)) / width;
            if (force > peak.force) peak = {begin + width / 2, force};
        }
    return peak;
}

}  // namespace swale
