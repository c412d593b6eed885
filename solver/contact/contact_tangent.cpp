#include "solver/contact/contact_tangent.h"

namespace swale {

namespace {

// Products of the four splines in the order 00 10 11 20 21 22 30 31 32 33.
Eigen::Matrix<double, 10, 1> pair_products(const std::array<double, 4>& value) {
    Eigen::Matrix<double, 10, 1> products;
    for (int a = 0, pair = 0; a < 4; ++a)
        for (int b = 0; b <= a; ++b) products[pair++] = value[a] * value[b];
    return products;
}

constexpr int pair_of(int a, int b) {
    return a >= b ? a * (a + 1) / 2 + b : b * (b + 1) / 2 + a;
}

}  // namespace

void ContactTangent::add(const BasisValues& across, const Eigen::Matrix3d& stiffness) {
    if (line_empty_) line_.setZero();
    line_empty_ = false;
    Eigen::Matrix<double, 6, 1> C;
    C << stiffness(0, 0), stiffness(1, 0), stiffness(1, 1), stiffness(2, 0), stiffness(2, 1), stiffness(2, 2);
    line_ += C.lazyProduct(pair_products(across.value).transpose());
}

void ContactTangent::close_line(const BasisValues& along) {
    if (line_empty_) return;
    if (empty_) sum_.setZero();
    empty_ = false;
    line_empty_ = true;
    sum_ += line_.reshaped().lazyProduct(pair_products(along.value).transpose());
}

ElementTangent ContactTangent::result() const {
    ElementTangent tangent;
    for (int a = 0; a < 4; ++a)
        for (int c = 0; c <= a; ++c) {
            const double* part = &sum_.coeffRef(0, pair_of(a, c));
            for (int d = 0; d < 4; ++d)
                for (int j = 0; j < 3; ++j)
                    for (int b = 0; b < 4; ++b)
                        for (int i = 0; i < 3; ++i)
                            tangent(12 * a + 3 * b + i, 12 * c + 3 * d + j) = part[6 * pair_of(b, d) + pair_of(i, j)];
        }
    return tangent;
}

}  // namespace swale
