#pragma once

#include <functional>
#include <string>
#include <vector>

/// Grids of one linear problem, each with every span smaller than the last.
namespace swale::verification {

/// The value that finer and finer grids should meet, out of linear_shells.csv.
struct LinearLimit {
    std::string problem, quantity, source;
    double value;
    double tolerance;  ///< of the finest grid, relative
    std::string why;   ///< this tolerance
};

LinearLimit linear_limit(const std::string& problem, double tolerance, const std::string& why);

struct Study {
    std::vector<int> spans;
    std::vector<double> values;
    double order = 0;  ///< of the error between the last two grids, log(e1/e2)/log(n2/n1)
};

/// Solves grids of n x n spans, checks the finest one against the limit and draws the errors over the size of a span.
Study study(const LinearLimit& limit, int points_per_span, const std::vector<int>& spans,
            const std::function<double(int)>& solve);

/// Limit of the last two values of a study whose error falls with a known order (Richardson).
double extrapolated(const Study& study, double order);

}  // namespace swale::verification
