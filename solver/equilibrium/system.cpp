#include "solver/equilibrium/system.h"

#include "mesh/quadrature.h"
#include "solver/equilibrium/band_sink.h"
#include "solver/equilibrium/dead_load.h"
#include "solver/equilibrium/stopwatch.h"

#include <algorithm>
#include <utility>

namespace swale {

namespace {

// Farthest distance of two unknowns that the control points depend on.
template <class Nodes>
int reach(const Nodes& nodes, const Supports& supports) {
    int lowest = supports.unknowns(), highest = -1;
    for (const int node : nodes)
        for (int c = 0; c < 3; ++c)
            for (const auto& share : supports.shares(node, c)) {
                lowest = std::min(lowest, share.unknown);
                highest = std::max(highest, share.unknown);
            }
    return std::max(0, highest - lowest);
}

int half_bandwidth_of(const Patch& patch, const Supports& supports) {
    int widest = 0;
    for (int s = 0; s < patch.along.spans(); ++s)
        for (int t = 0; t < patch.across.spans(); ++t) widest = std::max(widest, reach(patch.nodes(s, t), supports));
    return widest;
}

// Integrals of N_a N_b over each span; degree six is exact with four Gauss points.
std::vector<Eigen::Matrix4d> span_products(const CubicBasis& basis) {
    std::vector<Eigen::Matrix4d> products(basis.spans(), Eigen::Matrix4d::Zero());
    const LineRule rule = gauss_rule(basis, 4);
    for (std::size_t k = 0; k < rule.points.size(); ++k) {
        const Eigen::Map<const Eigen::Vector4d> N(rule.points[k].basis.value.data());
        products[k / 4] += rule.points[k].weight * N * N.transpose();
    }
    return products;
}

}  // namespace

System::System(const Patch& patch, Supports supports)
    : patch_(patch), supports_(std::move(supports)), half_bandwidth_(half_bandwidth_of(patch_, supports_)) {}

void System::add(std::shared_ptr<const Term> term, TermKind kind) {
    half_bandwidth_ = std::max(half_bandwidth_, reach(term->coupled_points(), supports_));
    terms_.push_back({std::move(term), kind});
}

template <class Work>
void System::for_each_term(TermTimes* times, const Work& work) const {
    TermTimes unread;
    for (const Entry& entry : terms_) timed((times ? *times : unread).of(entry.kind), [&] { work(*entry.term); });
}

double System::energy(const Eigen::VectorXd& q, TermTimes* times) const {
    const ControlPoints points = supports_.expand(q);
    double sum = 0;
    for_each_term(times, [&](const Term& term) { sum += term.energy(points); });
    return sum;
}

ControlPoints System::full_gradient(const ControlPoints& points, TermTimes* times) const {
    ControlPoints gradient = ControlPoints::Zero(3, patch_.points());
    for_each_term(times, [&](const Term& term) { term.add_gradient(points, gradient); });
    return gradient;
}

BandMatrix System::empty_band() const {
    return {supports_.unknowns(), half_bandwidth_};
}

BandMatrix System::tangent(const ControlPoints& points, TermTimes* times) const {
    BandMatrix band = empty_band();
    tangent_into(points, band, times);
    return band;
}

void System::tangent_into(const ControlPoints& points, BandMatrix& band, TermTimes* times) const {
    if (band.size() != unknowns() || band.half_bandwidth() != half_bandwidth_) band = empty_band();
    BandSink sink(patch_, supports_, band);
    for_each_term(times, [&](const Term& term) { term.add_tangent(points, sink); });
    sink.close();
}

Eigen::VectorXd System::areas() const {
    const Eigen::VectorXd control = control_areas(patch_);
    Eigen::VectorXd areas = Eigen::VectorXd::Zero(unknowns());
    for (int p = 0; p < patch_.points(); ++p)
        for (int c = 0; c < 3; ++c)
            for (const auto& share : supports_.shares(p, c)) areas[share.unknown] += share.weight * share.weight * control[p];
    return areas;
}

BandMatrix System::area_matrix() const {
    BandMatrix band = empty_band();
    BandSink sink(patch_, supports_, band);
    const auto along = span_products(patch_.along), across = span_products(patch_.across);
    ElementTangent tangent = ElementTangent::Zero();
    for (int s = 0; s < patch_.along.spans(); ++s)
        for (int t = 0; t < patch_.across.spans(); ++t) {
            for (int a = 0; a < 16; ++a)
                for (int b = 0; b <= a; ++b) {
                    const double product = along[s](a / 4, b / 4) * across[t](a % 4, b % 4);
                    tangent.block<3, 3>(3 * a, 3 * b).diagonal().setConstant(product);
                }
            sink.add(patch_.nodes(s, t), tangent);
        }
    sink.close();
    return band;
}

}  // namespace swale
