#include "solver/wear/return_model.h"

#include <algorithm>
#include <utility>

namespace swale {

namespace {

double gap_at(const ReturnRun& run, const ReturnModel& model, const Eigen::Vector3d& position) {
    return model.contact->roll().distance(position) - run.section.underside;
}

RollPressure read_line(const ReturnRun& run, const ReturnModel& model, const ControlPoints& points, const LinePoint& across,
                       const LineRule& along) {
    const Eigen::Vector3d middle = model.patch.jet(points, across.position, 0).position;
    RollPressure place{middle.x(), across.weight, 0, gap_at(run, model, middle)};
    for (const LinePoint& at : along.points) {
        if (at.position > contact_reach) break;
        const Eigen::Vector3d position = model.patch.jet(points, across.position, at.position).position;
        place.force += 2 * at.weight * model.contact->pressure_at(position);  // both sides of the roll's plane
    }
    return place;
}

void add_mirror_image(std::vector<RollPressure>& pressure) {
    std::vector<RollPressure> whole;
    for (auto place = pressure.rbegin(); place != pressure.rend(); ++place)
        whole.push_back({-place->y, place->width, place->force, place->gap});
    whole.insert(whole.end(), pressure.begin(), pressure.end());
    pressure = std::move(whole);
}

}  // namespace

RollContact read_contact(const ReturnRun& run, const ReturnModel& model, const ControlPoints& points) {
    const LineRule across = gauss_rule(model.patch.along, 4), along = gauss_rule(model.patch.across, 5);
    RollContact contact;
    for (const LinePoint& at : across.points) {
        const RollPressure place = read_line(run, model, points, at, along);
        contact.force += place.force * place.width * (model.half ? 2 : 1);
        contact.widest_gap = std::max(contact.widest_gap, place.gap);
        contact.pressure.push_back(place);
    }
    const auto edge = [&](double x) { return gap_at(run, model, model.patch.jet(points, x, 0).position); };
    contact.edge_gap = edge(model.patch.along.end());
    if (!model.half) contact.edge_gap = std::max(contact.edge_gap, edge(model.patch.along.begin()));
    if (model.half) add_mirror_image(contact.pressure);
    return contact;
}

}  // namespace swale
