#include "benchmarks/wear/random_survey.h"

#include "materials/catalogue.h"
#include "mesh/idler_series.h"
#include "solver/wear/shape_table.h"

#include <algorithm>
#include <cmath>
#include <functional>
#include <utility>

namespace swale::benchmark {

namespace {

constexpr double degree = 3.14159265358979323846 / 180;

struct Conveyor {
    const char* belt;
    double width, tension_per_width, spacing;
};
constexpr Conveyor conveyors[surveyed_conveyors] = {
    {"EP 400/3 4+2", 650, 6, 3000},    {"EP 500/3 5+2", 800, 8, 3000},    {"EP 800/4 6+3", 1000, 12, 3000},
    {"EP 800/4 6+3", 1200, 10, 3000},  {"EP 1000/4 6+3", 1400, 15, 3000}, {"NN 500/4 5+2", 1000, 7, 2500},
    {"EP 1250/5 8+3", 1600, 18, 3600}, {"EP 630/4 5+2", 1050, 5, 2000},   {"ST 1600 8+6", 1200, 20, 3000},
    {"ST 1000 6+4", 1000, 14, 3000},   {"ST 2500 8+6", 1800, 25, 4000},   {"EP 500/3 4+2", 1200, 4, 3000}};

// Sum of twelve: near enough to a normal distribution, and the same everywhere.
double normal(Draw& draw) {
    double sum = -6;
    for (int k = 0; k < 12; ++k) sum += draw.uniform(0, 1);
    return sum;
}

// Pressure of the belt across the roll, blurred by its wander.
class Pattern {
  public:
    Pattern(const RollContact& contact, double width, double wander) : wander_(wander) {
        double force = 0;
        for (const RollPressure& place : contact.pressure) force += place.force * place.width;
        for (const RollPressure& place : contact.pressure)
            if (place.force > 0) heaps_.emplace_back(place.y, place.force * place.width / force * width);
    }

    double at(double y) const {
        double sum = 0;
        for (const auto& [place, heap] : heaps_) sum += heap * std::exp(-0.5 * std::pow((y - place) / wander_, 2));
        return sum / (wander_ * std::sqrt(2 * 3.14159265358979323846));
    }

  private:
    std::vector<std::pair<double, double>> heaps_;
    double wander_;
};

using Exposed = std::function<double(double y)>;

Explanation drawn_explanation(Draw& draw) {
    return draw.one_of<Explanation>(
        {Explanation::flat, Explanation::cupped, Explanation::creased, Explanation::both, Explanation::mistracked});
}

double cupping_of(Draw& draw, double width, double least, double most) {
    return (draw.chance(0.5) ? -8 : 8) * draw.log_uniform(least, most) / width;
}

// A belt called flat has a rise of up to 1.5 % of its width.
BeltMemory drawn_memory(Explanation explanation, double width, Draw& draw) {
    BeltMemory memory;
    memory.cupping = cupping_of(draw, width, 1e-5, 0.015);
    if (explanation == Explanation::cupped) memory.cupping = cupping_of(draw, width, 0.03, 0.25);
    if (explanation == Explanation::both) memory.cupping = cupping_of(draw, width, 0.03, 0.12);
    if (explanation == Explanation::both) memory.left_crease = memory.right_crease = -draw.log_uniform(5, 22) * degree;
    if (explanation != Explanation::creased) return memory;
    memory.left_crease = -draw.log_uniform(4, 32) * degree;
    memory.right_crease = memory.left_crease;
    if (draw.chance(0.3)) (draw.chance(0.5) ? memory.left_crease : memory.right_crease) = 0;
    return memory;
}

double drawn_offset(const WearSurvey& survey, Explanation explanation, Draw& draw) {
    const double width = survey.run.width, most = (survey.roll_length - width) / 2;
    const double far = (draw.chance(0.5) ? -1 : 1) * draw.uniform(0.045 * width, std::max(0.06 * width, most));
    const bool off = explanation == Explanation::mistracked || (explanation != Explanation::flat && draw.chance(0.3));
    return off ? far : draw.uniform(-0.035, 0.035) * width;
}

// Depths with a noise that grows with depth, another that does not, and a gauge's steps; ends of the range may be missing.
void measure(const Exposed& exposed, double half, Draw& draw, SurveyedRoll& roll) {
    const double step = draw.uniform(50, 130), scale = draw.log_uniform(0.2, 2), noise = draw.uniform(0.05, 0.3);
    const double begin = draw.chance(0.2) ? draw.uniform(-half, 0) : -half + draw.uniform(0, step);
    for (double y = begin; y < half; y += step) {
        const double depth = scale * (exposed(y) * (1 + noise * normal(draw)) + 0.04 * normal(draw));
        roll.depths.push_back({rounded(y, 5), std::max(0.0, rounded(depth, 0.05))});
    }
}

// Marks by a threshold of the eye, wrong now and then, unsure near the threshold.
void mark(const Exposed& exposed, double half, Draw& draw, SurveyedRoll& roll) {
    const double step = draw.uniform(40, 110), threshold = draw.log_uniform(0.1, 1.2), wrong = draw.uniform(0, 0.08);
    const double begin = draw.chance(0.2) ? draw.uniform(-half, 0) : -half;
    for (double y = begin; y + step <= half; y += step) {
        const double here = (exposed(y + 0.2 * step) + exposed(y + 0.5 * step) + exposed(y + 0.8 * step)) / 3;
        const bool worn = (here > threshold) != draw.chance(wrong);
        const bool unsure = std::abs(std::log((here + 0.01) / threshold)) < 0.35 || draw.chance(0.05);
        roll.bands.push_back({y, y + step, unsure ? Mark::unsure : worn ? Mark::contact : Mark::none});
    }
}

}  // namespace

WearSurvey conveyor(int index) {
    const Conveyor& drawn = conveyors[index];
    const Belt belt = belt_from_designation(drawn.belt, drawn.width);
    WearSurvey survey;
    const double junction = (*standard_roll_length(drawn.width) + 10) / 2;
    survey.run = {belt.section, drawn.width, drawn.width * drawn.tension_per_width, drawn.spacing, 133, junction};
    survey.roll_length = rounded(1.08 * drawn.width + 80, 50);
    survey.stiffness_low = 0.55;
    survey.stiffness_high = 1.7;
    return survey;
}

RandomSurvey random_survey(const WearSurvey& conveyor, Draw& draw, double power) {
    RandomSurvey made{conveyor, {}};
    WearTruth& truth = made.truth;
    truth.explanation = drawn_explanation(draw);
    ReturnRun run = conveyor.run;
    run.tension *= draw.uniform(0.85, 1.15);
    run.section = with_stiffness_across(run.section, draw.log_uniform(conveyor.stiffness_low, conveyor.stiffness_high));
    truth.memory = drawn_memory(truth.explanation, run.width, draw);
    const RollContact contact = contact_on_return_roll(run, truth.memory, {0.75});
    truth.solved = contact.converged;
    truth.reason = contact.reason;
    const int rolls = draw.one_of<int>({1, 1, 2, 3, 4});
    for (int k = 0; k < rolls; ++k) {
        const Pattern pattern(contact, run.width, draw.uniform(9, 42));
        const double offset = drawn_offset(conveyor, truth.explanation, draw), tilt = draw.uniform(-0.25, 0.25);
        const Exposed exposed = [&](double y) {
            return std::pow(pattern.at(y - offset) * (1 + tilt * 2 * (y - offset) / run.width), power);
        };
        SurveyedRoll roll{"roll " + std::to_string(k + 1), {}, {}};
        if (draw.chance(0.5))
            measure(exposed, conveyor.roll_length / 2, draw, roll);
        else
            mark(exposed, conveyor.roll_length / 2, draw, roll);
        made.survey.rolls.push_back(std::move(roll));
    }
    return made;
}

}  // namespace swale::benchmark
