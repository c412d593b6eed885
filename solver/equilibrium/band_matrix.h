#pragma once

#include <Eigen/Core>

#include <utility>

namespace swale {

/// Lower half of a symmetric band, one column per unknown: entry (i, j), i >= j, at row i - j (LAPACK's band storage).
class BandMatrix {
  public:
    BandMatrix(int size, int half_bandwidth) : entries_(Eigen::MatrixXd::Zero(half_bandwidth + 1, size)) {}

    int size() const { return static_cast<int>(entries_.cols()); }
    int half_bandwidth() const { return static_cast<int>(entries_.rows()) - 1; }
    void add(int i, int j, double value) { i >= j ? entries_(i - j, j) += value : entries_(j - i, i) += value; }
    double operator()(int i, int j) const;
    auto diagonal() { return entries_.row(0); }
    Eigen::MatrixXd& entries() { return entries_; }
    const Eigen::MatrixXd& entries() const { return entries_; }
    void multiply(const double* x, double* y) const;
    /// Numbers the unknowns from the last to the first.
    void reverse();

  private:
    Eigen::MatrixXd entries_;
};

/// Cholesky factor of a band matrix by LAPACK dpbtrf.
class BandFactor {
  public:
    /// Factorises in place; ok() is false if the matrix is not positive definite, failed_row() names where.
    explicit BandFactor(BandMatrix matrix);

    bool ok() const { return failed_row_ < 0; }
    int failed_row() const { return failed_row_; }
    /// A shorter right side is one of the matrix without its last unknowns, whose factor is the first part of this one.
    Eigen::VectorXd solve(const Eigen::VectorXd& right) const;
    /// The matrix condensed onto its last `count` unknowns, at most one more than the half bandwidth.
    Eigen::MatrixXd condensed(int count) const;
    /// Hands the memory back for the next matrix; what stands in it is no matter.
    BandMatrix memory() && { return std::move(factor_); }

  private:
    BandMatrix factor_;
    int failed_row_ = -1;
};

}  // namespace swale
