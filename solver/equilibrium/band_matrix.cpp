#include "solver/equilibrium/band_matrix.h"

#include <algorithm>
#include <cstdlib>
#include <mutex>
#include <stdexcept>
#include <utility>

// LAPACK and BLAS of OpenBLAS, by their Fortran names.
extern "C" {
void dpbtrf_(const char* uplo, const int* n, const int* kd, double* ab, const int* ldab, int* info);
void dpbtrs_(const char* uplo, const int* n, const int* kd, const int* nrhs, const double* ab, const int* ldab, double* b,
             const int* ldb, int* info);
void dsbmv_(const char* uplo, const int* n, const int* k, const double* alpha, const double* a, const int* lda, const double* x,
            const int* incx, const double* beta, double* y, const int* incy);
void openblas_set_num_threads(int threads);
}

namespace swale {

double BandMatrix::operator()(int i, int j) const {
    if (i < j) std::swap(i, j);
    return i - j > half_bandwidth() ? 0 : entries_(i - j, j);
}

void BandMatrix::multiply(const double* x, double* y) const {
    const int n = size(), kd = half_bandwidth(), ld = kd + 1, step = 1;
    const double one = 1, zero = 0;
    dsbmv_("L", &n, &kd, &one, entries_.data(), &ld, x, &step, &zero, y, &step);
}

// Entry (j + d, j) becomes (n - 1 - j, n - 1 - j - d).
void BandMatrix::reverse() {
    for (int d = 0; d <= std::min(half_bandwidth(), size() - 1); ++d) entries_.row(d).head(size() - d).reverseInPlace();
}

BandFactor::BandFactor(BandMatrix matrix) : factor_(std::move(matrix)) {
    // One thread: two brought a narrow band no gain, and one gives the same bits in every run.
    static std::once_flag once;
    std::call_once(once, [] { openblas_set_num_threads(1); });
    const int n = factor_.size(), kd = factor_.half_bandwidth(), ld = kd + 1;
    int info = 0;
    dpbtrf_("L", &n, &kd, factor_.entries().data(), &ld, &info);
    if (info < 0) throw std::logic_error("dpbtrf was called wrongly");
    if (info > 0) failed_row_ = info - 1;
}

Eigen::VectorXd BandFactor::solve(const Eigen::VectorXd& right) const {
    const int n = static_cast<int>(right.size()), kd = factor_.half_bandwidth(), ld = kd + 1, one = 1;
    if (n > factor_.size()) throw std::logic_error("a right side is longer than its band matrix");
    Eigen::VectorXd x = right;
    int info = 0;
    dpbtrs_("L", &n, &kd, &one, factor_.entries().data(), &ld, x.data(), &n, &info);
    if (info != 0 || !ok()) throw std::logic_error("a band matrix was solved that could not be factorised");
    return x;
}

// A = L L^T; what is left of A's last block after the others are eliminated is L's last block times its transpose.
Eigen::MatrixXd BandFactor::condensed(int count) const {
    if (!ok() || count > factor_.half_bandwidth() + 1) throw std::logic_error("a band factor can't be condensed so far");
    const int first = factor_.size() - count;
    Eigen::MatrixXd last = Eigen::MatrixXd::Zero(count, count);
    for (int j = 0; j < count; ++j)
        for (int i = j; i < count; ++i) last(i, j) = factor_.entries()(i - j, first + j);
    return last * last.transpose();
}

}  // namespace swale
