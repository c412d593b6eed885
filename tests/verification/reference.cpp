#include "tests/verification/reference.h"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <fstream>
#include <iomanip>

namespace swale::verification {

namespace {

const char* in_words(Kind kind) {
    switch (kind) {
        case Kind::closed_form:
            return "closed form";
        case Kind::other_method:
            return "other method";
        case Kind::published_table:
            return "published";
        case Kind::practice:
            return "practice";
    }
    return "";
}

// Tabs part the cells, so they and line ends become blanks in a text.
std::string cell(std::string text) {
    for (char& c : text)
        if (c == '\t' || c == '\n') c = ' ';
    return text;
}

// A file that collects what `.ci/verify` makes its page of: in the folder that it names, at the end of what is there.
std::ofstream collected(const char* name) {
    const char* folder = std::getenv("SWALE_VERIFICATION");
    std::ofstream file;
    if (folder) file.open(std::string(folder) + "/" + name, std::ios::app);
    return file;
}

std::string test_case() {
    return doctest::getContextOptions()->currentTest->m_name;
}

void collect(const std::string& quantity, const Reference& r, double measured) {
    std::ofstream rows = collected("rows.tsv");
    if (!rows) return;
    rows << std::setprecision(10) << cell(test_case()) << '\t' << cell(quantity) << '\t' << r.value << '\t' << r.unit << '\t'
         << in_words(r.kind) << '\t' << cell(r.source) << '\t' << cell(r.conditions) << '\t' << measured << '\t' << r.tolerance
         << '\t' << cell(r.why) << '\n';
}

}  // namespace

void check(const std::string& quantity, const Reference& reference, double measured) {
    collect(quantity, reference, measured);
    const double off = measured / reference.value - 1;
    const std::string unit = reference.unit;
    CHECK_MESSAGE(std::abs(off) <= reference.tolerance, quantity, ": measured ", measured, " ", unit, ", reference ",
                  reference.value, ", off by ", off, "; ", reference.source, "; ", reference.conditions, "; tolerance ",
                  reference.tolerance, ": ", reference.why);
}

std::vector<std::pair<double, double>> pairs(const std::vector<double>& xs, const std::vector<double>& ys) {
    std::vector<std::pair<double, double>> points;
    for (std::size_t k = 0; k < std::min(xs.size(), ys.size()); ++k) points.emplace_back(xs[k], ys[k]);
    return points;
}

void say(const std::string& sentence) {
    std::ofstream notes = collected("notes.tsv");
    if (notes) notes << cell(test_case()) << '\t' << cell(sentence) << '\n';
}

void draw(const Curve& curve) {
    std::ofstream curves = collected("curves.tsv");
    if (!curves) return;
    curves << std::setprecision(10);
    for (const auto& [x, y] : curve.points)
        curves << cell(curve.picture) << '\t' << cell(curve.name) << '\t' << cell(curve.x_label) << '\t' << cell(curve.y_label)
               << '\t' << curve.published << '\t' << curve.logarithmic << '\t' << x << '\t' << y << '\n';
}

}  // namespace swale::verification
