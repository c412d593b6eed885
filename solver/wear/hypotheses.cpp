#include "solver/wear/hypotheses.h"

#include <cmath>
#include <numbers>

namespace swale {

namespace {

constexpr double degree = std::numbers::pi / 180;

// What is thought of a memory before anyone looks, alike on a logarithmic scale. Assumptions: below the least of it no one
// would call a belt cupped or creased, and a flat one is so slightly cupped at most.
constexpr double slight_cupping = 0.012;
constexpr double least_cupping = 0.03, most_cupping = 0.25;  // rise / width
constexpr double least_crease = 4 * degree, most_crease = 32 * degree;
constexpr double share_of_one_side = 0.15;  // of creased belts: left alone, and right alone

constexpr int cupping_points = 10, crease_points = 11, one_side_points = 7, mixed_points = 4, stiffness_points = 5;

struct Point {
    double value, weight;
};

// Trapezoidal rule on a logarithmic scale; the weights add up to 1.
std::vector<Point> log_points(double low, double high, int count) {
    if (high <= low * 1.0001) return {{low, 1}};
    std::vector<Point> points;
    for (int k = 0; k < count; ++k)
        points.push_back(
            {low * std::pow(high / low, double(k) / (count - 1)), (k == 0 || k == count - 1 ? 0.5 : 1.0) / (count - 1)});
    return points;
}

class Collector {
  public:
    Collector(const WearSurvey& survey, const ShapeTable& table) : survey_(survey), table_(table) {}

    void add(Explanation explanation, double cupping, double left, double right, const Point& stiffness, double weight) {
        BeltHypothesis belt{explanation, weight * stiffness.weight, cupping, left, right, stiffness.value, {}};
        PressureShape shape = table_.at({cupping, left}, stiffness.value);
        if (left != right) shape = joined(shape, table_.at({cupping, right}, stiffness.value));
        for (const double wander : wanders) belt.exposure.emplace_back(shape, survey_.run.width, wander);
        belts_.push_back(std::move(belt));
    }

    void add_cupped(const Point& stiffness) {
        for (const Point& k : log_points(least_cupping, most_cupping, cupping_points))
            for (const int sign : {-1, 1}) add(Explanation::cupped, sign * k.value, 0, 0, stiffness, k.weight / 2);
    }

    void add_creased(const Point& stiffness) {
        for (const Point& a : log_points(least_crease, most_crease, crease_points))
            add(Explanation::creased, 0, a.value, a.value, stiffness, a.weight * (1 - 2 * share_of_one_side));
        for (const Point& a : log_points(least_crease, most_crease, one_side_points)) {
            add(Explanation::creased, 0, a.value, 0, stiffness, a.weight * share_of_one_side);
            add(Explanation::creased, 0, 0, a.value, stiffness, a.weight * share_of_one_side);
        }
    }

    void add_both(const Point& stiffness) {
        for (const Point& k : log_points(0.03, 0.12, mixed_points))
            for (const Point& a : log_points(5 * degree, 22 * degree, mixed_points + 1))
                for (const int sign : {-1, 1})
                    add(Explanation::both, sign * k.value, a.value, a.value, stiffness, k.weight * a.weight / 2);
    }

    std::vector<BeltHypothesis> take() { return std::move(belts_); }

  private:
    const WearSurvey& survey_;
    const ShapeTable& table_;
    std::vector<BeltHypothesis> belts_;
};

}  // namespace

double prior_of(Explanation explanation) {
    return explanation == Explanation::other ? 0.1 : 0.9 / (explanations - 1);
}

std::vector<BeltHypothesis> belt_hypotheses(const WearSurvey& survey, const ShapeTable& table) {
    Collector collector(survey, table);
    for (const double slight : {-slight_cupping, 0.0, slight_cupping})
        collector.add(Explanation::flat, slight, 0, 0, {1, 1}, 1.0 / 3);
    for (const Point& stiffness : log_points(survey.stiffness_low, survey.stiffness_high, stiffness_points)) {
        collector.add_cupped(stiffness);
        collector.add_creased(stiffness);
        collector.add_both(stiffness);
    }
    return collector.take();
}

}  // namespace swale
