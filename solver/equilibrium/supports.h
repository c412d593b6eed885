#pragma once

#include "mesh/patch.h"
#include "solver/equilibrium/element_tangent.h"

#include <Eigen/Core>

#include <vector>

namespace swale {

/// A component of a control point.
struct Freedom {
    int point = 0;
    int component = 0;
};

/// Linear conditions on control points, x = T q + c: fixed components, components tied to others. What is left are the
/// unknowns q, numbered along the belt, so that the tangent stays a narrow band.
class Supports {
  public:
    struct Share {
        int unknown = 0;
        double weight = 1;
    };
    struct Weighted {
        Freedom freedom;
        double weight = 1;
    };

    explicit Supports(int points);

    void fix(Freedom freedom, double value);
    /// freedom = sum of weight * master + offset; masters may themselves be tied or fixed, but not in a circle.
    void tie(Freedom freedom, std::vector<Weighted> masters, double offset = 0);
    /// Numbers the unknowns; no fix or tie afterwards.
    void close();

    int unknowns() const { return unknowns_; }
    const std::vector<Share>& shares(int point, int component) const { return shares_[3 * point + component]; }

    /// The unknown that a component is, `fixed` without one, `combined` if it is a weighted sum.
    int plain_unknown(int point, int component) const { return plain_[3 * point + component]; }
    static constexpr int fixed = -1, combined = -2;
    /// How many components from the first of a point on are plain unknowns numbered one after the other.
    int consecutive(int point) const { return consecutive_[3 * point]; }

    ControlPoints expand(const Eigen::VectorXd& q) const;
    /// T^T g: the residual of the unknowns from that of the control points.
    Eigen::VectorXd restrict(const ControlPoints& gradient) const;
    /// Unknowns that come nearest to given control points: each takes the component it was numbered at.
    Eigen::VectorXd project(const ControlPoints& points) const;

  private:
    struct Rule {
        bool free = true;
        double offset = 0;
        std::vector<Weighted> masters;
    };
    void resolve(int dof);

    std::vector<Rule> rules_;
    std::vector<std::vector<Share>> shares_;
    std::vector<int> plain_, consecutive_;
    std::vector<double> offsets_;
    std::vector<int> owner_;  // component that an unknown was numbered at
    std::vector<char> resolved_;
    int unknowns_ = 0;
};

}  // namespace swale
