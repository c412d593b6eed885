#include "solver/wear/return_model.h"

#include <algorithm>
#include <utility>

namespace swale {

namespace {

void read_line(const ReturnModel& model, const ControlPoints& points, const LinePoint& across, const LineRule& along,
               RollContact& contact) {
    RollPressure place{0, across.weight, 0};
    place.y = model.patch.jet(points, across.position, 0).position.x();
    for (const LinePoint& at : along.points) {
        if (at.position > contact_reach) break;
        const Eigen::Vector3d position = model.patch.jet(points, across.position, at.position).position;
        place.force += 2 * at.weight * model.contact->pressure_at(position);  // both sides of the roll's plane
    }
    contact.force += place.force * place.width * (model.half ? 2 : 1);
    contact.pressure.push_back(place);
}

double gap_at(const ReturnRun& run, const ReturnModel& model, const ControlPoints& points, double x) {
    const Eigen::Vector3d position = model.patch.jet(points, x, 0).position;
    return model.contact->roll().clearance(position).distance - run.section.underside;
}

void add_mirror_image(std::vector<RollPressure>& pressure) {
    std::vector<RollPressure> whole;
    for (auto place = pressure.rbegin(); place != pressure.rend(); ++place)
        whole.push_back({-place->y, place->width, place->force});
    whole.insert(whole.end(), pressure.begin(), pressure.end());
    pressure = std::move(whole);
}

}  // namespace

RollContact read_contact(const ReturnRun& run, const ReturnModel& model, const ControlPoints& points) {
    const LineRule across = gauss_rule(model.patch.along, 4), along = gauss_rule(model.patch.across, 5);
    RollContact contact;
    for (const LinePoint& at : across.points) {
        read_line(model, points, at, along, contact);
        contact.widest_gap = std::max(contact.widest_gap, gap_at(run, model, points, at.position));
    }
    contact.edge_gap =
        std::max(gap_at(run, model, points, model.patch.along.begin()), gap_at(run, model, points, model.patch.along.end()));
    if (model.half) contact.edge_gap = gap_at(run, model, points, model.patch.along.end());
    if (model.half) add_mirror_image(contact.pressure);
    return contact;
}

}  // namespace swale
