#pragma once

#include <cmath>

namespace swale {

/// Four numbers, one for each of four spans that are treated at once; arithmetic is entry by entry, also with a plain number.
/// A vector type of the compiler (GCC, Clang), which takes what vector instructions the machine has.
using Lanes = double __attribute__((vector_size(32)));
inline constexpr int lanes = 4;

inline Lanes square_root(const Lanes& x) {
    return Lanes{std::sqrt(x[0]), std::sqrt(x[1]), std::sqrt(x[2]), std::sqrt(x[3])};
}

/// A vector in space in each lane.
struct LaneVector {
    Lanes x{}, y{}, z{};

    const Lanes& at(int i) const { return i == 0 ? x : i == 1 ? y : z; }
    LaneVector& operator+=(const LaneVector& v) {
        x += v.x;
        y += v.y;
        z += v.z;
        return *this;
    }
};

inline LaneVector operator+(const LaneVector& u, const LaneVector& v) {
    return {u.x + v.x, u.y + v.y, u.z + v.z};
}
inline LaneVector operator-(const LaneVector& u, const LaneVector& v) {
    return {u.x - v.x, u.y - v.y, u.z - v.z};
}
inline LaneVector operator*(const Lanes& factor, const LaneVector& v) {
    return {factor * v.x, factor * v.y, factor * v.z};
}
inline LaneVector operator*(double factor, const LaneVector& v) {
    return {factor * v.x, factor * v.y, factor * v.z};
}
inline Lanes dot(const LaneVector& u, const LaneVector& v) {
    return u.x * v.x + u.y * v.y + u.z * v.z;
}
inline LaneVector cross(const LaneVector& u, const LaneVector& v) {
    return {u.y * v.z - u.z * v.y, u.z * v.x - u.x * v.z, u.x * v.y - u.y * v.x};
}

/// A 3 x 3 matrix in each lane.
struct LaneMatrix {
    Lanes m[3][3];
};

/// Sum of u v^T over pairs of vectors.
template <int count>
LaneMatrix sum_of_outer(const LaneVector (&u)[count], const LaneVector (&v)[count]) {
    LaneMatrix sum;
    for (int i = 0; i < 3; ++i)
        for (int j = 0; j < 3; ++j) {
            sum.m[i][j] = u[0].at(i) * v[0].at(j);
            for (int k = 1; k < count; ++k) sum.m[i][j] += u[k].at(i) * v[k].at(j);
        }
    return sum;
}
/// matrix += factor * I
inline void add_diagonal(const Lanes& factor, LaneMatrix& matrix) {
    for (int i = 0; i < 3; ++i) matrix.m[i][i] += factor;
}
/// matrix += skew(v), skew(v) u = v x u
inline void add_skew(const LaneVector& v, LaneMatrix& matrix) {
    matrix.m[0][1] -= v.z;
    matrix.m[0][2] += v.y;
    matrix.m[1][0] += v.z;
    matrix.m[1][2] -= v.x;
    matrix.m[2][0] -= v.y;
    matrix.m[2][1] += v.x;
}
inline LaneMatrix operator*(const Lanes& factor, const LaneMatrix& matrix) {
    LaneMatrix result;
    for (int i = 0; i < 3; ++i)
        for (int j = 0; j < 3; ++j) result.m[i][j] = factor * matrix.m[i][j];
    return result;
}
inline LaneMatrix transposed(const LaneMatrix& matrix) {
    LaneMatrix result;
    for (int i = 0; i < 3; ++i)
        for (int j = 0; j < 3; ++j) result.m[i][j] = matrix.m[j][i];
    return result;
}

}  // namespace swale
