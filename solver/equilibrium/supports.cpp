#include "solver/equilibrium/supports.h"

#include <algorithm>
#include <stdexcept>
#include <utility>

namespace swale {

namespace {

int number(Freedom freedom) {
    return 3 * freedom.point + freedom.component;
}

}  // namespace

Supports::Supports(int points) : rules_(3 * points), shares_(3 * points), offsets_(3 * points, 0.0), resolved_(3 * points, 0) {}

void Supports::fix(Freedom freedom, double value) {
    rules_.at(number(freedom)) = {false, value, {}};
}

void Supports::tie(Freedom freedom, std::vector<Weighted> masters, double offset) {
    rules_.at(number(freedom)) = {false, offset, std::move(masters)};
}

void Supports::close() {
    // A free component gets its number at the first place along the belt where it appears, be it through a tied one.
    for (int dof = 0; dof < static_cast<int>(rules_.size()); ++dof) resolve(dof);
    for (const auto& shares : shares_) {
        const bool plain = shares.size() == 1 && shares[0].weight == 1;
        plain_.push_back(shares.empty() ? fixed : plain ? shares[0].unknown : combined);
    }
    consecutive_.assign(plain_.size(), 0);
    for (std::size_t dof = plain_.size(); dof-- > 0;) {
        const bool goes_on = dof + 1 < plain_.size() && plain_[dof + 1] == plain_[dof] + 1;
        consecutive_[dof] = plain_[dof] < 0 ? 0 : goes_on ? consecutive_[dof + 1] + 1 : 1;
    }
}

void Supports::resolve(int dof) {
    if (resolved_[dof] == 2) return;
    if (resolved_[dof] == 1) throw std::logic_error("control points are tied in a circle");
    resolved_[dof] = 1;
    const Rule& rule = rules_[dof];
    if (rule.free) {
        shares_[dof] = {{unknowns_++, 1.0}};
        owner_.push_back(dof);
    }
    offsets_[dof] = rule.offset;
    for (const Weighted& master : rule.masters) {
        const int from = number(master.freedom);
        resolve(from);
        offsets_[dof] += master.weight * offsets_[from];
        for (const Share& share : shares_[from]) {
            const auto same = std::find_if(shares_[dof].begin(), shares_[dof].end(),
                                           [&](const Share& s) { return s.unknown == share.unknown; });
            if (same != shares_[dof].end())
                same->weight += master.weight * share.weight;
            else
                shares_[dof].push_back({share.unknown, master.weight * share.weight});
        }
    }
    resolved_[dof] = 2;
}

ControlPoints Supports::expand(const Eigen::VectorXd& q) const {
    ControlPoints points(3, static_cast<Eigen::Index>(shares_.size() / 3));
    for (std::size_t dof = 0; dof < shares_.size(); ++dof) {
        double value = offsets_[dof];
        for (const Share& share : shares_[dof]) value += share.weight * q[share.unknown];
        points.data()[dof] = value;
    }
    return points;
}

Eigen::VectorXd Supports::restrict(const ControlPoints& gradient) const {
    Eigen::VectorXd residual = Eigen::VectorXd::Zero(unknowns_);
    for (std::size_t dof = 0; dof < shares_.size(); ++dof)
        for (const Share& share : shares_[dof]) residual[share.unknown] += share.weight * gradient.data()[dof];
    return residual;
}

Eigen::VectorXd Supports::project(const ControlPoints& points) const {
    Eigen::VectorXd q(unknowns_);
    for (int u = 0; u < unknowns_; ++u) q[u] = points.data()[owner_[u]];
    return q;
}

}  // namespace swale
