#include "solver/design/state_tangent.h"

#include "mesh/belt_grid.h"
#include "solver/criteria/criteria.h"
#include "solver/newton/newton.h"
#include "solver/strain/readings.h"
#include "solver/transition/path_map.h"
#include "solver/transition/state_solver.h"

#include <cmath>
#include <future>
#include <utility>

namespace swale {

using Eigen::VectorXd;

namespace {

constexpr double step_of_scale = 1e-6;
// Rounds of correction: the first is the answer unless a bulk moves with the belt or the difference was rounded off.
constexpr int most_rounds = 6;
constexpr double settled = 1e-7;

Patch moved_knots(const Patch& patch, double from_scale, double to_scale, const PathMap& map) {
    std::vector<double> breaks = patch.along.breaks();
    for (double& x : breaks) x = to_scale * map.at(x / from_scale);
    return {CubicBasis(std::move(breaks)), patch.across};
}

// Both sides of a difference at a time.
template <class Ahead, class Behind>
auto side_by_side(const Ahead& ahead, const Behind& behind) {
    auto beside = std::async(std::launch::async, behind);
    auto here = ahead();
    return std::pair{std::move(here), beside.get()};
}

// Two rounds, since the bulk lies on the bay before.
TroughBay bay_of(const TransitionCase& transition, const TensionState& state, const TroughBay& known) {
    NewtonTimes times;
    TroughBay bay = same_bay(transition, state, known, times);
    return bay.bulk ? same_bay(transition, state, bay, times) : bay;
}

}  // namespace

StateTangent::StateTangent(const TransitionCase& transition, const TensionState& state, int sets, BeltModel model,
                           const ControlPoints& points)
    : transition_(transition),
      state_(state),
      sets_(sets),
      model_(std::move(model)),
      unknowns_(model_.system.supports().project(points)),
      miss_(model_.far_end(points) - model_length(transition.layout, sets)) {
    if (transition.layout.pulley.run_on == RunOn::steady) {
        why_none_ = "a belt in steady run-on has no tangent of its own: its section is held by friction";
        return;
    }
    factor_.emplace(model_.system.tangent(points));
    if (!factor_->ok()) {
        why_none_ = "the belt's shape is not stable";
        return;
    }
    floating_ = !model_.beyond && transition.layout.trough.support == Support::rolls;
    model_follows_ = floating_ || model_.bulk;
    if (!floating_) return;
    Sides sides = sides_of(nullptr, step_of_scale);
    const Rate by_scale = rate(sides, {VectorXd::Zero(unknowns_.size()), 1});
    by_length_ = -factor_->solve(by_scale.residual);
    miss_by_length_ = by_scale.miss + end_motion(by_length_);
}

std::shared_ptr<const EndlessTrough> StateTangent::trough_of(const Parameter* parameter, const TransitionCase& transition,
                                                             const TensionState& state) const {
    if (!model_.beyond || !parameter || !parameter->of_trough) return model_.beyond;
    TroughBay bay = bay_of(transition, state, model_.beyond->bay);
    std::optional<JointStiffness> joint = joint_stiffness(transition, bay, Parity::symmetric);
    if (!joint) return model_.beyond;
    return std::make_shared<const EndlessTrough>(EndlessTrough{std::move(bay), std::move(*joint)});
}

StateTangent::Moved StateTangent::moved(const Parameter* parameter, double change) const {
    Moved moved{transition_, state_, model_.beyond, model_};
    if (parameter) parameter->set(moved.transition, moved.state, parameter->value(transition_, state_) + change);
    moved.trough = trough_of(parameter, moved.transition, moved.state);
    remodel(moved, model_.scale, unknowns_);
    return moved;
}

void StateTangent::remodel(Moved& moved, double scale, const VectorXd& unknowns) const {
    const TransitionCase& transition = moved.transition;
    const auto map = PathMap::between(transition_.layout, transition.layout, sets_, transition.belt.section.underside);
    const Patch patch = moved_knots(model_.patch, model_.scale, scale, map.value());
    const auto build = [&](std::optional<BulkLoad> bulk) {
        return belt_model(transition, moved.state, sets_, patch, scale, points_per_span, moved.trough, {}, std::move(bulk));
    };
    moved.model = build({});
    if (!model_.bulk) return;
    const ControlPoints points = moved.model.system.supports().expand(unknowns);
    moved.model = build(belt_bulk(transition, moved.state, patch, scale, points));
}

StateTangent::Sides StateTangent::sides_of(const Parameter* parameter, double step) const {
    auto [ahead, behind] = side_by_side([&] { return moved(parameter, step); }, [&] { return moved(parameter, -step); });
    return {step, std::move(ahead), std::move(behind)};
}

void StateTangent::follow(Sides& sides, const BeltMotion& motion) const {
    if (!model_follows_) return;
    const double h = sides.step;
    remodel(sides.ahead, model_.scale + h * motion.scale, unknowns_ + h * motion.unknowns);
    remodel(sides.behind, model_.scale - h * motion.scale, unknowns_ - h * motion.unknowns);
}

StateTangent::Rate StateTangent::residual(const Moved& at, const VectorXd& unknowns) const {
    const Supports& supports = at.model.system.supports();
    const ControlPoints points = supports.expand(unknowns);
    return {supports.restrict(at.model.system.full_gradient(points)),
            at.model.far_end(points) - model_length(at.transition.layout, sets_)};
}

// Central difference along the parameter and the motion together.
StateTangent::Rate StateTangent::rate(Sides& sides, const BeltMotion& motion) const {
    follow(sides, motion);
    const double h = sides.step;
    const auto [ahead, behind] = side_by_side([&] { return residual(sides.ahead, unknowns_ + h * motion.unknowns); },
                                              [&] { return residual(sides.behind, unknowns_ - h * motion.unknowns); });
    return {(ahead.residual - behind.residual) / (2 * h), (ahead.miss - behind.miss) / (2 * h)};
}

double StateTangent::end_motion(const VectorXd& unknowns) const {
    const Supports& supports = model_.system.supports();
    return model_.far_end(supports.expand(unknowns)) - model_.far_end(supports.expand(VectorXd::Zero(unknowns.size())));
}

// A Newton step on what is left of the residual's rate and of the far plane's.
void StateTangent::correct(const Rate& rate, BeltMotion& motion) const {
    const VectorXd correction = -factor_->solve(rate.residual);
    motion.unknowns += correction;
    if (!floating_) return;
    const double scale = -(rate.miss + end_motion(correction)) / miss_by_length_;
    motion.unknowns += scale * by_length_;
    motion.scale += scale;
}

BeltMotion StateTangent::motion(const Parameter& parameter) const {
    Sides sides = sides_of(&parameter, parameter.step);
    return motion_between(sides);
}

BeltMotion StateTangent::motion_between(Sides& sides) const {
    BeltMotion motion{VectorXd::Zero(unknowns_.size()), 0};
    double first = 0;
    for (int round = 0; round < most_rounds; ++round) {
        const Rate left = rate(sides, motion);
        const double size = left.residual.norm();
        if (round == 0) first = size;
        if (size <= settled * first) break;
        correct(left, motion);
    }
    follow(sides, motion);
    return motion;
}

namespace {

std::vector<Judgement> judged(const TransitionCase& transition, const TensionState& state, const BeltModel& model,
                              const VectorXd& unknowns) {
    const ControlPoints points = model.system.supports().expand(unknowns);
    return judge_state(transition, state,
                       recover_judged(transition, state, model, points, take_readings(transition, model, points)));
}

}  // namespace

std::vector<std::optional<double>> StateTangent::derivatives(const Parameter& parameter) const {
    const double h = parameter.step;
    Sides sides = sides_of(&parameter, h);
    const VectorXd rates = motion_between(sides).unknowns;
    const auto judged_at = [&](const Moved& at, double change) {
        return judged(at.transition, at.state, at.model, unknowns_ + change * rates);
    };
    const auto [ahead, behind] =
        side_by_side([&] { return judged_at(sides.ahead, h); }, [&] { return judged_at(sides.behind, -h); });
    std::vector<std::optional<double>> derivatives(ahead.size());
    for (std::size_t k = 0; k < ahead.size(); ++k)
        if (ahead[k].value && behind[k].value) derivatives[k] = (*ahead[k].value - *behind[k].value) / (2 * h);
    return derivatives;
}

std::vector<Judgement> StateTangent::solved(const Parameter& parameter, double change, const BeltMotion& motion) const {
    VectorXd unknowns = unknowns_ + change * motion.unknowns;
    double scale = model_.scale + change * motion.scale;
    NewtonSettings settings;
    settings.tolerance = 1e-11;
    Moved at = moved(&parameter, change);
    for (int round = 0;; ++round) {
        remodel(at, scale, unknowns);
        const NewtonOutcome outcome = minimise(at.model.system, unknowns, settings);
        if (!outcome.converged) return {};
        unknowns = outcome.q;
        const double miss = residual(at, unknowns).miss - miss_;
        const bool again = (floating_ && std::abs(miss) > 1e-9) || (model_.bulk && round < 4);
        if (!again || round == 8) return judged(at.transition, at.state, at.model, unknowns);
        if (!floating_) continue;
        scale -= miss / miss_by_length_;
        unknowns -= miss / miss_by_length_ * by_length_;
    }
}

}  // namespace swale
