#pragma once

#include "mesh/patch.h"
#include "mesh/quadrature.h"
#include "mesh/roll.h"
#include "solver/contact/contact_law.h"
#include "solver/equilibrium/term.h"

namespace swale {

/// Part of the unstretched belt that a roll may touch [mm].
struct ContactWindow {
    double x_begin = 0, x_end = 0, y_begin = 0, y_end = 0;
};

/// Frictionless contact of the belt's underside with one roll: the law's energy per unstretched area, integrated by a rule of
/// its own over the spans in the window. The gap is the roll's clearance from the mid-surface less `underside`.
class ContactEnergy final : public Term {
  public:
    /// `along` x `across` Gauss points a span: a belt touches an idler on a line some 5 to 8 mm wide.
    ContactEnergy(const Patch& patch, const Roll& roll, const ContactLaw& law, double underside, const ContactWindow& window,
                  int along = 6, int across = 4);

    double energy(const ControlPoints& points) const override;
    void add_gradient(const ControlPoints& points, ControlPoints& gradient) const override;
    void add_tangent(const ControlPoints& points, TangentSink& sink) const override;

    /// Force on the belt, the pressure integrated over material x >= `from` [N].
    Eigen::Vector3d force(const ControlPoints& points, double from = -1e300) const;
    /// Pressure per unstretched area at a point in space [MPa].
    double pressure_at(const Eigen::Vector3d& position) const;
    /// Smallest gap over the window; positive: lifted off [mm].
    double smallest_gap(const ControlPoints& points) const;
    /// Force per width along the contact line, one entry per row of contact points across: y and N/mm.
    std::vector<std::pair<double, double>> line_force(const ControlPoints& points) const;
    const Roll& roll() const { return roll_; }

  private:
    struct Touch;
    struct Span;
    template <class Visit>
    void for_each_span(const ControlPoints& points, const Visit& visit) const;
    template <class Visit>
    void for_each_near_span(const ControlPoints& points, const Visit& visit) const;
    template <class Visit>
    void for_each_point(const Span& span, int line, const Visit& visit) const;
    template <class Visit>
    void for_each_touch(const Span& span, int line, const Visit& visit) const;
    template <class Visit>
    void for_each_touch(const ControlPoints& points, const Visit& visit) const;
    bool out_of_reach(const Span& span) const;

    Patch patch_;
    Roll roll_;
    ContactLaw law_;
    double underside_;
    LineRule along_, across_;
    int first_along_, last_along_, first_across_, last_across_;
};

}  // namespace swale
