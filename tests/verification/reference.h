#pragma once

#include <string>
#include <utility>
#include <vector>

namespace swale::verification {

/// Where a value comes from; an own regression is never evidence and has no place here.
enum class Kind {
    closed_form,   ///< of the law that the shell itself has, computed in the check
    other_method,  ///< own computation by another method than the one under test
    published_table,
    practice,  ///< of the trade, no source
};

/// A value to be met, with all that a reader needs to judge the agreement.
struct Reference {
    double value;
    const char* unit;
    std::string source;
    Kind kind;
    std::string conditions;
    double tolerance;  ///< relative
    std::string why;   ///< this tolerance
};

/// A doctest check that `measured` is within the tolerance of the reference; a failure prints all of it. `quantity` names it in
/// the table of `.ci/verify`, in which it becomes a row of the running test case.
void check(const std::string& quantity, const Reference& reference, double measured);

/// A sentence under the running test case's heading on the page of `.ci/verify`.
void say(const std::string& sentence);

/// A line of a picture of `.ci/verify`; `published` ones are drawn as points.
struct Curve {
    std::string picture;  ///< title; curves of one picture share it
    std::string name;
    std::string x_label, y_label;
    std::vector<std::pair<double, double>> points;
    bool published = false;
    bool logarithmic = false;  ///< both axes
};

/// The points of a curve.
std::vector<std::pair<double, double>> pairs(const std::vector<double>& xs, const std::vector<double>& ys);

/// Kept for the page of `.ci/verify`; does nothing in an ordinary test run.
void draw(const Curve& curve);

}  // namespace swale::verification
