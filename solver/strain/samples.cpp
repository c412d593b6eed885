#include "solver/strain/samples.h"

#include <algorithm>
#include <cmath>
#include <optional>
#include <utility>

namespace swale {

namespace {

// begin, ..., end in equal steps of at most `step`.
std::vector<double> ladder(double begin, double end, double step) {
    const int n = std::max(1, static_cast<int>(std::ceil((end - begin) / step - 1e-9)));
    std::vector<double> xs;
    for (int k = 0; k <= n; ++k) xs.push_back(k == n ? end : begin + (end - begin) * k / n);
    return xs;
}

// Break points and a few between them: pieces of some 5 mm in the short spans at a roll, where the contact line is as narrow,
// and of at most 50 mm elsewhere.
std::vector<double> sub_breaks(const CubicBasis& basis) {
    std::vector<double> xs;
    for (int s = 0; s < basis.spans(); ++s) {
        const double begin = basis.breaks()[s], length = basis.breaks()[s + 1] - begin;
        const int pieces = length < 18 ? 3 : static_cast<int>(std::ceil(length / 50));
        for (int k = 0; k < pieces; ++k) xs.push_back(begin + length * k / pieces);
    }
    xs.push_back(basis.end());
    return xs;
}

// With the mirror image of positive places where only they are modelled.
std::vector<double> both_sides(std::vector<double> ys) {
    if (ys.front() < 0) return ys;
    std::vector<double> whole;
    for (auto y = ys.rbegin(); y != ys.rend(); ++y)
        if (*y > 0) whole.push_back(-*y);
    whole.insert(whole.end(), ys.begin(), ys.end());
    return whole;
}

// Sum of the pressures of all rolls at material (x, y); on the side that is not modelled those of the mirror image.
double contact_pressure(const BeltProbe& probe, const BeltModel& model, double x, double y) {
    const Eigen::Vector3d position = probe.patch().jet(probe.points(), x, model.half ? std::abs(y) : y).position;
    double pressure = 0;
    for (const BeltContact& contact : model.contacts)
        if (std::abs(position.x() - contact.x) < 2 * contact.energy->roll().radius || contact.place == RollPlace::pulley)
            pressure += contact.energy->pressure_at(position);
    return pressure;
}

// Largest pressure of the contact lines near x.
double line_pressure(const BeltProbe& probe, const BeltModel& model, double x, double y, const Lengthwise& lines) {
    double pressure = 0;
    for (double k = lines.behind - 20; k <= lines.ahead + 20; ++k)
        pressure = std::max(pressure, contact_pressure(probe, model, std::clamp(x + k, probe.begin(), probe.end()), y));
    return pressure;
}

CrossSection cross_section(const BeltProbe& probe, const BeltModel& model, std::string name, double x,
                           const std::optional<Lengthwise>& lines) {
    CrossSection section{std::move(name), {}};
    for (const double y : both_sides(ladder(0, probe.edge(), 10))) {
        section.points.push_back(probe.at(x, y));
        if (lines) section.points.back().contact_pressure = line_pressure(probe, model, x, y, *lines);
    }
    return section;
}

}  // namespace

std::vector<AlongRow> sample_along(const BeltProbe& probe, const TransitionLayout& layout) {
    std::vector<AlongRow> rows;
    for (const double x : ladder(probe.begin(), probe.end(), 25))
        rows.push_back({probe.at(x, probe.edge()), probe.at(x, layout.junction()), probe.at(x, 0)});
    return rows;
}

std::vector<CrossSection> sample_across(const BeltProbe& probe, const TransitionLayout& layout, const BeltModel& model) {
    std::vector<CrossSection> sections;
    sections.push_back(
        cross_section(probe, model, "mid-transition", material_place(model, probe.points(), layout.distance / 2), {}));
    for (const IdlerSet& set : model.idlers) {
        // A held line stands at a knot of the belt; rolls stand in space.
        const bool rolls = set.support == Support::rolls;
        const double x = rolls ? material_place(model, probe.points(), set.x) : set.path * model.scale;
        sections.push_back(
            cross_section(probe, model, set.name, x, rolls ? std::optional(contact_lines(layout, set)) : std::nullopt));
    }
    return sections;
}

BeltSurface sample_surface(const BeltProbe& probe, const BeltModel& model) {
    const std::vector<double> xs = sub_breaks(probe.patch().along);
    const std::vector<double> ys = both_sides(probe.patch().across.breaks());
    BeltSurface surface{static_cast<int>(xs.size()), static_cast<int>(ys.size()), {}};
    surface.points.reserve(xs.size() * ys.size());
    for (const double x : xs)
        for (const double y : ys) {
            SurfacePoint point = probe.at(x, y);
            point.contact_pressure = contact_pressure(probe, model, x, y);
            surface.points.push_back(point);
        }
    return surface;
}

}  // namespace swale
