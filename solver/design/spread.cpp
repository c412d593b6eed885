#include "solver/spread.h"

#include "solver/design/sizer.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <numeric>
#include <random>
#include <utility>

namespace swale {

bool Tolerances::any() const {
    for (const double one :
         {tension, membrane_stiffness, bending_stiffness, mass, distance, lift, idler_place, idler_angle, idler_lift})
        if (one > 0) return true;
    return false;
}

namespace {

/// A parameter and its standard deviation; of the tension as a share.
struct Uncertain {
    Parameter parameter;
    double deviation;
};

// The tension of every state as a share of itself, so that one number moves them all.
Parameter tension_share() {
    return {"tension",
            "1",
            2e-5,
            true,
            [](const TransitionCase&, const TensionState&) { return 1.0; },
            [](TransitionCase&, TensionState& state, double value) {
                if (state.total) *state.total *= value;
            }};
}

void add(std::vector<Uncertain>& all, const std::vector<Parameter>& parameters, const std::string& name, double tolerance) {
    for (const Parameter& parameter : parameters)
        if (parameter.name == name && tolerance > 0) all.push_back({parameter, tolerance / 2});
}

std::vector<Uncertain> uncertain_numbers(const TransitionCase& transition, const Tolerances& t) {
    const std::vector<Parameter> geometry = geometry_parameters(transition), belt = belt_parameters(transition);
    std::vector<Uncertain> all;
    if (t.tension > 0) all.push_back({tension_share(), t.tension / 2});
    add(all, belt, "A", t.membrane_stiffness);
    add(all, belt, "D", t.bending_stiffness);
    add(all, belt, "mass", t.mass * transition.belt.section.mass);
    add(all, geometry, "distance", t.distance);
    add(all, geometry, "pulley lift", t.lift);
    for (std::size_t k = 1; k <= transition.layout.stations.size(); ++k) {
        const std::string station = "station " + std::to_string(k);
        add(all, geometry, station + " place", t.idler_place);
        add(all, geometry, station + " angle", t.idler_angle);
        add(all, geometry, station + " lift", t.idler_lift);
    }
    return all;
}

// Slopes by the uncertain numbers, and by the distance behind them.
Trial sloped(const TransitionCase& arranged, const std::vector<Uncertain>& numbers, const SizingBounds& bounds,
             Trials& trials) {
    std::vector<Parameter> by;
    for (const Uncertain& number : numbers) by.push_back(number.parameter);
    by.push_back(distance_variable(bounds, arranged).parameter);
    return trials.of(arranged, trials.all_states(), by);
}

double deviation_of(const Headroom& headroom, const std::vector<Uncertain>& numbers) {
    if (headroom.slopes.empty()) return 0;
    double variance = 0;
    for (std::size_t k = 0; k < numbers.size(); ++k) variance += std::pow(headroom.slopes[k] * numbers[k].deviation, 2);
    return std::sqrt(variance);
}

// Of a normal distribution: the share above x deviations.
double above(double x) {
    return std::erfc(x / std::numbers::sqrt2) / 2;
}

// The x that a share lies above, by bisection.
double quantile_above(double share) {
    double low = -9, high = 9;
    for (int k = 0; k < 80; ++k) (above((low + high) / 2) > share ? low : high) = (low + high) / 2;
    return low;
}

double exceeds(double headroom, double deviation) {
    if (deviation == 0) return headroom < 0 ? 1 : 0;
    return above(headroom / deviation);
}

CriterionSpread spread_of_one(const Headroom& headroom, const Judgement& judgement, const std::vector<Uncertain>& numbers) {
    CriterionSpread spread;
    spread.criterion = headroom.criterion;
    spread.state = headroom.state;
    spread.unit = judgement.unit;
    spread.value = *judgement.value;
    spread.limit = *judgement.limit;
    spread.headroom = headroom.share;
    spread.headroom_deviation = deviation_of(headroom, numbers);
    spread.deviation = spread.headroom_deviation * headroom.scale;
    spread.exceeds = exceeds(headroom.share, spread.headroom_deviation);
    const double variance = std::pow(spread.headroom_deviation, 2);
    for (std::size_t k = 0; k < numbers.size(); ++k)
        spread.parts.push_back(
            {numbers[k].parameter.name, variance > 0 ? std::pow(headroom.slopes[k] * numbers[k].deviation, 2) / variance : 0});
    std::ranges::stable_sort(spread.parts, std::ranges::greater(), &CriterionSpread::Part::share);
    return spread;
}

/// Numbers drawn at random, in standard deviations; the same in every run.
class Draws {
  public:
    explicit Draws(std::size_t numbers) : numbers_(numbers) {}
    std::vector<double> next() {
        std::vector<double> draw(numbers_);
        for (double& one : draw) one = normal_(engine_);
        return draw;
    }

  private:
    std::size_t numbers_;
    std::mt19937_64 engine_{20260101};
    std::normal_distribution<double> normal_;
};

// How often any limit is exceeded, of many draws of the headrooms to first order.
double any_exceeds(const std::vector<Headroom>& headrooms, const std::vector<Uncertain>& numbers) {
    constexpr int most = 20000;
    Draws draws(numbers.size());
    int over = 0;
    for (int k = 0; k < most; ++k) {
        const std::vector<double> draw = draws.next();
        over += std::ranges::any_of(headrooms, [&](const Headroom& headroom) {
            double share = headroom.share;
            for (std::size_t i = 0; i < numbers.size(); ++i) share += headroom.slopes[i] * numbers[i].deviation * draw[i];
            return share < 0;
        });
    }
    return static_cast<double>(over) / most;
}

TransitionCase drawn(const TransitionCase& given, const std::vector<Uncertain>& numbers, const std::vector<double>& draw) {
    TransitionCase transition = given;
    std::vector<TensionState> states = given.states;
    for (std::size_t k = 0; k < numbers.size(); ++k) {
        const Parameter& parameter = numbers[k].parameter;
        const double value = parameter.value(transition, states.front()) + numbers[k].deviation * draw[k];
        TransitionCase before = transition;
        for (TensionState& state : states) {
            transition = before;
            parameter.set(transition, state, value);
        }
    }
    transition.states = std::move(states);
    return transition;
}

struct Sampled {
    int count = 0, over = 0;
    double sum = 0, squares = 0;
    void take(double left) {
        ++count;
        over += left < 0;
        sum += left;
        squares += left * left;
    }
    double deviation() const { return count > 1 ? std::sqrt(std::max(0.0, (squares - sum * sum / count) / (count - 1))) : 0; }
};

// Whole sets of numbers drawn and solved, each belt started from the one before.
void sample(const TransitionCase& given, const std::vector<Uncertain>& numbers, int samples, Trials& trials,
            ToleranceSpread& spread) {
    if (samples == 0) return;
    Draws draws(numbers.size());
    std::vector<Sampled> sampled(spread.criteria.size());
    int any = 0;
    for (int k = 0; k < samples; ++k) {
        const Trial trial = trials.of(drawn(given, numbers, draws.next()), trials.all_states(), {});
        any += !trial.passes();
        if (!trial.solved()) {
            ++spread.samples_without;
            continue;
        }
        ++spread.samples;
        for (std::size_t j = 0; j < sampled.size(); ++j)
            for (const Headroom& headroom : trial.headrooms)
                if (headroom.criterion == spread.criteria[j].criterion && headroom.state == spread.criteria[j].state)
                    sampled[j].take(headroom.left());
    }
    spread.sampled_any_exceeds = static_cast<double>(any) / samples;
    for (std::size_t j = 0; j < sampled.size(); ++j) {
        CriterionSpread& one = spread.criteria[j];
        one.sampled_deviation = sampled[j].deviation();
        if (sampled[j].count > 0) one.sampled_exceeds = static_cast<double>(sampled[j].over) / sampled[j].count;
    }
}

// Headrooms less as many deviations as the wanted probability asks for; the slopes are those of the headrooms themselves.
Trial kept_back(Trial trial, const std::vector<Uncertain>& numbers, double deviations) {
    for (Headroom& headroom : trial.headrooms) {
        headroom.share -= deviations * deviation_of(headroom, numbers);
        if (!headroom.slopes.empty()) headroom.slopes = {headroom.slopes.back()};
    }
    return trial;
}

std::string why_without(const Trial& trial) {
    if (!trial.solved()) return trial.why_none;
    for (const Headroom& headroom : trial.headrooms)
        if (headroom.slopes.empty()) return "the belt has no derivatives in \"" + headroom.state + "\"";
    return "";
}

// Where the belt has no derivatives nothing is known of the spread: no answer.
std::optional<double> distance_for(const TransitionCase& given, const Tolerances& tolerances, const SizingBounds& bounds,
                                   const Trial& as_given, Trials& trials) {
    const double deviations = quantile_above(tolerances.exceed);
    DistanceSearch search(bounds.shortest, bounds.longest, bounds.relative);
    double distance = std::ceil(std::clamp(given.layout.distance, bounds.shortest, bounds.longest));
    for (int k = 0; k < 20; ++k) {
        const TransitionCase arranged = at_distance(given, distance);
        const std::vector<Uncertain> numbers = uncertain_numbers(arranged, tolerances);
        const std::string impossible = why_impossible(arranged.layout);
        const Trial trial = !impossible.empty()                 ? Trial{{}, impossible}
                            : distance == given.layout.distance ? as_given
                                                                : sloped(arranged, numbers, bounds, trials);
        const std::string unknown = why_without(trial);
        search.take({distance, unknown.empty() ? kept_back(trial, numbers, deviations) : Trial{{}, unknown}});
        const auto guess = search.next();
        if (!guess) break;
        distance = guess->distance;
    }
    if (!search.passing()) return {};
    return search.passing()->distance;
}

}  // namespace

ToleranceSpread spread_of(const TransitionCase& given, const Tolerances& tolerances, const SizingBounds& bounds, int samples,
                          const ProgressListener& listener) {
    Trials trials(given, listener);
    ToleranceSpread spread;
    spread.result = trials.whole(given);
    const std::vector<Uncertain> numbers = uncertain_numbers(given, tolerances);
    spread.why_none = as_trial(spread.result).why_none;
    if (!spread.why_none.empty()) return spread;
    const Trial trial = sloped(given, numbers, bounds, trials);
    spread.why_none = why_without(trial);
    if (!spread.why_none.empty()) return spread;
    for (const Headroom& headroom : trial.headrooms) {
        const auto judged = std::ranges::find_if(spread.result.criteria, [&](const Judgement& j) {
            return j.name == headroom.criterion && j.state == headroom.state;
        });
        spread.criteria.push_back(spread_of_one(headroom, *judged, numbers));
    }
    spread.any_exceeds = any_exceeds(trial.headrooms, numbers);
    sample(given, numbers, samples, trials, spread);
    std::ranges::stable_sort(spread.criteria, std::ranges::greater(), &CriterionSpread::exceeds);
    spread.distance = distance_for(given, tolerances, bounds, trial, trials);
    return spread;
}

}  // namespace swale
