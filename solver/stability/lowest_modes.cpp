#include "solver/stability/lowest_modes.h"

#include <Spectra/SymGEigsShiftSolver.h>

#include <algorithm>

namespace swale {

namespace {

using Index = Eigen::Index;

// y = (K - shift M)^-1 x on a factor at hand.
class ShiftedInverse {
  public:
    using Scalar = double;
    explicit ShiftedInverse(const BandFactor& factor, int size) : factor_(factor), size_(size) {}
    Index rows() const { return size_; }
    Index cols() const { return size_; }
    void set_shift(double) {}  // the factor was made at the shift
    void perform_op(const double* x, double* y) const {
        Eigen::VectorXd::Map(y, size_) = factor_.solve(Eigen::VectorXd::Map(x, size_));
    }

  private:
    const BandFactor& factor_;
    int size_;
};

class AreaProduct {
  public:
    using Scalar = double;
    explicit AreaProduct(const BandMatrix& area) : area_(area) {}
    Index rows() const { return area_.size(); }
    Index cols() const { return area_.size(); }
    void perform_op(const double* x, double* y) const { area_.multiply(x, y); }

  private:
    const BandMatrix& area_;
};

std::vector<EigenMode> shift_invert(const BandFactor& factor, const BandMatrix& area, double shift, int count) {
    ShiftedInverse inverse(factor, area.size());
    AreaProduct product(area);
    Spectra::SymGEigsShiftSolver<ShiftedInverse, AreaProduct, Spectra::GEigsMode::ShiftInvert> solver(
        inverse, product, count, std::min(area.size(), 2 * count + 10), shift);
    solver.init();
    solver.compute(Spectra::SortRule::LargestMagn, 300, 1e-6, Spectra::SortRule::SmallestAlge);
    if (solver.info() != Spectra::CompInfo::Successful) return {};
    std::vector<EigenMode> modes;
    for (Index k = 0; k < solver.eigenvalues().size(); ++k)
        modes.push_back({solver.eigenvalues()[k], solver.eigenvectors().col(k)});
    std::sort(modes.begin(), modes.end(), [](const EigenMode& a, const EigenMode& b) { return a.value < b.value; });
    return modes;
}

}  // namespace

std::vector<EigenMode> lowest_modes(const System& system, const ControlPoints& points, int count) {
    const BandMatrix tangent = system.tangent(points), area = system.area_matrix();
    double shift = 0;
    for (int attempt = 0; attempt < 30; ++attempt) {
        BandMatrix shifted = tangent;
        shifted.entries() -= shift * area.entries();
        const BandFactor factor(std::move(shifted));
        if (factor.ok()) return shift_invert(factor, area, shift, count);
        shift = shift == 0 ? -1e-6 : 3 * shift;
    }
    return {};
}

}  // namespace swale
