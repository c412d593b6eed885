#pragma once

#include "solver/equilibrium/band_matrix.h"
#include "solver/equilibrium/supports.h"
#include "solver/equilibrium/term.h"

#include <memory>
#include <vector>

namespace swale {

/// What a term is, for the account of time.
enum class TermKind { shell, contact, load };

/// Wall time spent on energies, gradients and tangents of the terms [s].
struct TermTimes {
    double shell = 0, contact = 0, load = 0;
    double& of(TermKind kind) { return kind == TermKind::shell ? shell : kind == TermKind::contact ? contact : load; }
};

/// Terms on a patch under supports: potential energy, residual and tangent of the unknowns.
class System {
  public:
    System(const Patch& patch, Supports supports);

    void add(std::shared_ptr<const Term> term, TermKind kind = TermKind::shell);

    const Patch& patch() const { return patch_; }
    const Supports& supports() const { return supports_; }
    int unknowns() const { return supports_.unknowns(); }

    double energy(const Eigen::VectorXd& q, TermTimes* times = nullptr) const;
    /// Sum of the terms' gradients on all control points [N]; at fixed ones this is the reaction.
    ControlPoints full_gradient(const ControlPoints& points, TermTimes* times = nullptr) const;
    /// Tangent of the unknowns where the control points are [N/mm].
    BandMatrix tangent(const ControlPoints& points, TermTimes* times = nullptr) const;
    /// The same in the memory of a band that was used before; one of another size is replaced.
    void tangent_into(const ControlPoints& points, BandMatrix& band, TermTimes* times = nullptr) const;
    /// Area of each unknown [mm^2], lumped: the weight of a diagonal shift.
    Eigen::VectorXd areas() const;
    /// Consistent area matrix, the integral of N_a N_b [mm^2].
    BandMatrix area_matrix() const;

  private:
    BandMatrix empty_band() const;

    Patch patch_;
    Supports supports_;
    struct Entry {
        std::shared_ptr<const Term> term;
        TermKind kind;
    };
    template <class Work>
    void for_each_term(TermTimes* times, const Work& work) const;

    std::vector<Entry> terms_;
    int half_bandwidth_ = 0;
};

}  // namespace swale
