#include "solver/transition/belt_model.h"

#include "mesh/belt_grid.h"
#include "solver/transition/end_pull.h"

#include <algorithm>
#include <cmath>
#include <utility>

namespace swale {

namespace {

SupportRequest request_of(const TransitionCase& transition, const TensionState& state, const Patch& patch, double scale,
                          bool endless, Parity parity) {
    const bool half = patch.across.begin() == 0;
    return {transition.belt.section.underside, scale, half, parity, state.elongation, endless};
}

void add_terms(const TensionState& state, const BeltModel& model, const JointStiffness* joint, System& system) {
    system.add(model.shell);
    system.add(model.weight, TermKind::load);
    if (model.bulk) system.add(std::make_shared<DeadLoad>(model.bulk->forces), TermKind::load);
    for (const BeltContact& contact : model.contacts) system.add(contact.energy, TermKind::contact);
    if (joint)
        system.add(std::make_shared<TroughBeyond>(model.beyond->bay, *joint, model.patch, model.end), TermKind::load);
    else if (state.total)
        system.add(end_pull(model.patch, *state.total), TermKind::load);
}

}  // namespace

BeltModel belt_model(const TransitionCase& transition, const TensionState& state, int sets, const Patch& patch, double scale,
                     int gauss_points, const std::shared_ptr<const EndlessTrough>& beyond,
                     const std::optional<Eigen::Matrix2Xd>& pulley_section, std::optional<BulkLoad> bulk) {
    SupportRequest request = request_of(transition, state, patch, scale, beyond != nullptr, Parity::symmetric);
    request.section = pulley_section;
    const Section& section = transition.belt.section;
    const Eigen::Vector3d weight(0, 0, -section.mass * gravity);
    BeltModel model{patch,
                    scale,
                    model_length(transition.layout, sets),
                    patch.across.begin() == 0,
                    std::make_shared<ShellEnergy>(patch, section, NaturalCurvature{}, gauss_points),
                    std::make_shared<DeadLoad>(area_load(patch, weight)),
                    std::move(bulk),
                    belt_contacts(transition, state, patch, scale, sets),
                    idler_sets(transition.layout, sets),
                    beyond,
                    System(patch, belt_supports(transition.layout, patch, request))};
    add_terms(state, model, beyond ? &beyond->joint : nullptr, model.system);
    return model;
}

System free_section_system(const TransitionCase& transition, const TensionState& state, const BeltModel& model) {
    const bool endless = model.beyond != nullptr;
    SupportRequest request = request_of(transition, state, model.patch, model.scale, endless, Parity::symmetric);
    request.free_section = true;
    System system(model.patch, belt_supports(transition.layout, model.patch, request));
    add_terms(state, model, endless ? &model.beyond->joint : nullptr, system);
    return system;
}

OddSystem antisymmetric_system(const TransitionCase& transition, const TensionState& state, const BeltModel& model) {
    std::optional<JointStiffness> joint;
    if (model.beyond) joint = joint_stiffness(transition, model.beyond->bay, Parity::antisymmetric);
    const SupportRequest request =
        request_of(transition, state, model.patch, model.scale, joint.has_value(), Parity::antisymmetric);
    OddSystem odd{System(model.patch, belt_supports(transition.layout, model.patch, request)), model.beyond && !joint};
    add_terms(state, model, joint ? &*joint : nullptr, odd.system);
    return odd;
}

double material_place(const BeltModel& model, const ControlPoints& points, double x) {
    const CubicBasis& along = model.patch.along;
    double place = std::clamp(x * model.scale, along.begin(), along.end());
    for (int round = 0; round < 20; ++round) {
        const SurfaceJet jet = model.patch.jet(points, place, 0);
        const double next =
            std::clamp(place + (x - jet.position.x()) / std::max(0.2, jet.along.x()), along.begin(), along.end());
        if (std::abs(next - place) < 1e-6) return next;
        place = next;
    }
    return place;
}

std::vector<NamedRoll> all_rolls(const TransitionLayout& layout, int sets, double underside) {
    std::vector<NamedRoll> rolls;
    if (layout.pulley.support == Support::rolls) rolls.push_back({"pulley", pulley_roll(layout, underside)});
    for (const IdlerSet& set : idler_sets(layout, sets)) {
        if (set.support == Support::held) continue;
        for (const SetRoll& roll : rolls_of(layout, set, underside)) rolls.push_back({set.name + " " + roll.name, roll.roll});
    }
    return rolls;
}

}  // namespace swale
