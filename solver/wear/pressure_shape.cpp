#include "solver/wear/pressure_shape.h"

#include <algorithm>
#include <cmath>

namespace swale {

namespace {

constexpr double step = 4;  // of an exposure's table [mm]

// Places of equal shares of the force on one side; each place's force is spread evenly over its width.
std::array<double, PressureShape::shares> equal_shares(const std::vector<RollPressure>& side) {
    double total = 0;
    for (const RollPressure& place : side) total += place.force * place.width;
    std::array<double, PressureShape::shares> places{};
    std::size_t next = 0;
    double sum = 0;
    for (int k = 0; k < PressureShape::shares; ++k) {
        const double wanted = (k + 0.5) / PressureShape::shares * total;
        while (next + 1 < side.size() && sum + side[next].force * side[next].width < wanted) {
            sum += side[next].force * side[next].width;
            ++next;
        }
        const double here = side[next].force * side[next].width;
        const double share = here > 0 ? std::clamp((wanted - sum) / here, 0.0, 1.0) : 0.5;
        places[k] = std::abs(side[next].y) + (share - 0.5) * side[next].width;
    }
    return places;
}

std::vector<double> spread(const PressureShape& shape, double begin, int size) {
    std::vector<double> heap(size, 0.0);
    const auto put = [&](double y) {
        const double place = (y - begin) / step;
        const int low = std::clamp(static_cast<int>(std::floor(place)), 0, size - 2);
        heap[low] += 1 - (place - low);
        heap[low + 1] += place - low;
    };
    for (const double y : shape.left) put(y);
    for (const double y : shape.right) put(-y);
    return heap;
}

std::vector<double> gauss_kernel(double wander) {
    const int reach = static_cast<int>(std::ceil(3.5 * wander / step));
    std::vector<double> kernel;
    double sum = 0;
    for (int k = -reach; k <= reach; ++k) {
        kernel.push_back(std::exp(-0.5 * std::pow(k * step / wander, 2)));
        sum += kernel.back();
    }
    for (double& entry : kernel) entry /= sum;
    return kernel;
}

}  // namespace

PressureShape pressure_shape(const std::vector<RollPressure>& pressure) {
    std::vector<RollPressure> left, right;
    for (const RollPressure& place : pressure) (place.y > 0 ? left : right).push_back(place);
    std::reverse(right.begin(), right.end());
    return {equal_shares(left), equal_shares(right)};
}

PressureShape mixed(const PressureShape& from, const PressureShape& to, double share) {
    PressureShape shape;
    for (int k = 0; k < PressureShape::shares; ++k) {
        shape.left[k] = (1 - share) * from.left[k] + share * to.left[k];
        shape.right[k] = (1 - share) * from.right[k] + share * to.right[k];
    }
    return shape;
}

PressureShape joined(const PressureShape& left, const PressureShape& right) {
    return {left.left, right.right};
}

Exposure::Exposure(const PressureShape& shape, double width, double wander) {
    const double beyond = 4 * wander + 5 * step;
    begin_ = -width / 2 - beyond;
    const int size = static_cast<int>(std::ceil((width + 2 * beyond) / step)) + 1;
    const std::vector<double> heap = spread(shape, begin_, size), kernel = gauss_kernel(wander);
    const int reach = static_cast<int>(kernel.size()) / 2;
    const double even = 2 * PressureShape::shares * step / width;  // what each entry would bear of an even pressure
    value_.assign(size, 0.0);
    for (int i = 0; i < size; ++i) {
        if (heap[i] == 0) continue;
        for (int k = -reach; k <= reach; ++k)
            if (i + k >= 0 && i + k < size) value_[i + k] += heap[i] * kernel[k + reach] / even;
    }
    integral_.assign(size, 0.0);
    for (int i = 1; i < size; ++i) integral_[i] = integral_[i - 1] + step * (value_[i - 1] + value_[i]) / 2;
}

double Exposure::at(double y) const {
    const double place = (y - begin_) / step;
    const int last = static_cast<int>(value_.size()) - 1;
    if (!(place > 0 && place < last)) return 0;
    const int low = static_cast<int>(place);
    return value_[low] + (place - low) * (value_[low + 1] - value_[low]);
}

double Exposure::integral_to(double y) const {
    const double place = (y - begin_) / step;
    const int last = static_cast<int>(value_.size()) - 1;
    if (place <= 0) return 0;
    if (place >= last) return integral_.back();
    const int low = static_cast<int>(place);
    return integral_[low] + (place - low) * (integral_[low + 1] - integral_[low]);
}

double Exposure::over(double from, double to) const {
    return (integral_to(to) - integral_to(from)) / (to - from);
}

}  // namespace swale
