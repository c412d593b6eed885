#include "solver/stability/lowest_modes.h"

#include <Spectra/SymGEigsShiftSolver.h>
#include <Eigen/SparseCore>

#include <algorithm>
#include <stdexcept>

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

// y = M x. Lanczos multiplies five times by M for each solve, and M couples no two components: a fifth of its band is filled.
class AreaProduct {
  public:
    using Scalar = double;
    explicit AreaProduct(const BandMatrix& area) : lower_(area.size(), area.size()) {
        std::vector<Eigen::Triplet<double>> filled;
        for (int j = 0; j < area.size(); ++j)
            for (int i = j; i < std::min(area.size(), j + area.half_bandwidth() + 1); ++i)
                if (area.entries()(i - j, j) != 0) filled.emplace_back(i, j, area.entries()(i - j, j));
        lower_.setFromTriplets(filled.begin(), filled.end());
    }
    Index rows() const { return lower_.rows(); }
    Index cols() const { return lower_.cols(); }
    void perform_op(const double* x, double* y) const {
        Eigen::VectorXd::Map(y, rows()) = lower_.selfadjointView<Eigen::Lower>() * Eigen::VectorXd::Map(x, rows());
    }

  private:
    Eigen::SparseMatrix<double> lower_;
};

// Of a mode's residual, relative; the error of its eigenvalue is of second order in it.
constexpr double tolerance = 1e-4;

std::vector<EigenMode> shift_invert(const BandFactor& factor, const BandMatrix& area, double shift, int count) {
    ShiftedInverse inverse(factor, area.size());
    AreaProduct product(area);
    Spectra::SymGEigsShiftSolver<ShiftedInverse, AreaProduct, Spectra::GEigsMode::ShiftInvert> solver(
        inverse, product, count, std::min(area.size(), 2 * count + 6), shift);
    solver.init();
    solver.compute(Spectra::SortRule::LargestMagn, 300, tolerance, Spectra::SortRule::SmallestAlge);
    if (solver.info() != Spectra::CompInfo::Successful) return {};
    std::vector<EigenMode> modes;
    for (Index k = 0; k < solver.eigenvalues().size(); ++k)
        modes.push_back({solver.eigenvalues()[k], solver.eigenvectors().col(k)});
    std::sort(modes.begin(), modes.end(), [](const EigenMode& a, const EigenMode& b) { return a.value < b.value; });
    return modes;
}

// Lanczos breaks down on a matrix that is not finite or singular to rounding; Spectra then throws.
std::vector<EigenMode> modes_or_none(const BandFactor& factor, const BandMatrix& area, double shift, int count) {
    try {
        return shift_invert(factor, area, shift, count);
    } catch (const std::runtime_error&) {
        return {};
    }
}

}  // namespace

std::vector<EigenMode> lowest_modes(const System& system, const ControlPoints& points, int count) {
    const BandMatrix tangent = system.tangent(points), area = system.area_matrix();
    double shift = 0;
    for (int attempt = 0; attempt < 30; ++attempt) {
        BandMatrix shifted = tangent;
        shifted.entries() -= shift * area.entries();
        const BandFactor factor(std::move(shifted));
        if (factor.ok()) return modes_or_none(factor, area, shift, count);
        shift = shift == 0 ? -1e-6 : 3 * shift;
    }
    return {};
}

}  // namespace swale
