#pragma once

#include "solver/equilibrium/band_matrix.h"
#include "solver/sensitivity.h"
#include "solver/transition/belt_model.h"

#include <optional>
#include <string>
#include <vector>

namespace swale {

/// What a belt does as one number changes: rates per unit of it.
struct BeltMotion {
    Eigen::VectorXd unknowns;
    double scale = 0;  ///< of its unstretched length per length in space
};

/// A solved state, and where it goes to first order as a number of its case changes. The belt is carried along with pulley and
/// sets: its knots keep their shares of the way between them.
class StateTangent {
  public:
    /// `points` solve `model`.
    StateTangent(const TransitionCase& transition, const TensionState& state, int sets, BeltModel model,
                 const ControlPoints& points);

    /// Why nothing can be said; empty if it can.
    const std::string& why_none() const { return why_none_; }

    /// du/dp = -K^-1 dr/dp, the bulk laid anew on what moves, and a far plane kept at its mid-span by the belt's length.
    BeltMotion motion(const Parameter& parameter) const;

    /// How the value of each criterion changes, per unit of the parameter, in the order of `all_criteria`; absent where it has
    /// none.
    std::vector<std::optional<double>> derivatives(const Parameter& parameter) const;

    /// The same solved anew, on the knots that moved along. Empty if there is no solution.
    std::vector<Judgement> solved(const Parameter& parameter, double change, const BeltMotion& motion) const;

  private:
    /// The case with its number changed, and its model.
    struct Moved {
        TransitionCase transition;
        TensionState state;
        std::shared_ptr<const EndlessTrough> trough;
        BeltModel model;
    };
    /// The same to either side.
    struct Sides {
        double step;
        Moved ahead, behind;
    };
    struct Rate {
        Eigen::VectorXd residual;  // of the unknowns
        double miss = 0;           // of the far plane from its mid-span
    };
    Moved moved(const Parameter* parameter, double change) const;
    Sides sides_of(const Parameter* parameter, double step) const;
    void remodel(Moved& moved, double scale, const Eigen::VectorXd& unknowns) const;
    void follow(Sides& sides, const BeltMotion& motion) const;
    Rate residual(const Moved& at, const Eigen::VectorXd& unknowns) const;
    Rate rate(Sides& sides, const BeltMotion& motion) const;
    BeltMotion motion_between(Sides& sides) const;
    std::shared_ptr<const EndlessTrough> trough_of(const Parameter* parameter, const TransitionCase& transition,
                                                   const TensionState& state) const;
    void correct(const Rate& rate, BeltMotion& motion) const;
    double end_motion(const Eigen::VectorXd& unknowns) const;

    const TransitionCase& transition_;
    TensionState state_;
    int sets_;
    BeltModel model_;
    Eigen::VectorXd unknowns_;
    double miss_;  // of the far plane, as it was left [mm]
    std::optional<BandFactor> factor_;
    bool floating_ = false;       // the far plane's place fixes the unstretched length
    bool model_follows_ = false;  // the model itself changes as the belt moves: its length, or what lies on it
    Eigen::VectorXd by_length_;   // what the unknowns do per change of scale
    double miss_by_length_ = 0;
    std::string why_none_;
};

}  // namespace swale
