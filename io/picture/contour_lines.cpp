#include "io/picture/contour_lines.h"

#include <array>
#include <map>

namespace swale {

namespace {

/// A side of a cell by its first node and direction: two cells share it, so its crossing has one key.
using Side = std::array<Eigen::Index, 3>;

struct Crossing {
    Side side;
    Eigen::Vector2d point;
};

void cross(const GridField& field, double value, Side side, std::vector<Crossing>& found) {
    const auto [i, j, along] = side;
    const Eigen::Index k = i + (along ? 1 : 0), l = j + (along ? 0 : 1);
    const double here = field.values(i, j) - value, there = field.values(k, l) - value;
    if ((here < 0) == (there < 0)) return;
    const double share = here / (here - there);
    found.push_back({side, {field.x[i] + share * (field.x[k] - field.x[i]), field.y[j] + share * (field.y[l] - field.y[j])}});
}

std::vector<std::array<Crossing, 2>> pieces(const GridField& field, double value) {
    std::vector<std::array<Crossing, 2>> list;
    for (Eigen::Index i = 0; i + 1 < field.values.rows(); ++i)
        for (Eigen::Index j = 0; j + 1 < field.values.cols(); ++j) {
            std::vector<Crossing> found;
            for (const Side side : {Side{i, j, 1}, Side{i + 1, j, 0}, Side{i, j + 1, 1}, Side{i, j, 0}})
                cross(field, value, side, found);
            for (size_t k = 0; k + 1 < found.size(); k += 2) list.push_back({found[k], found[k + 1]});
        }
    return list;
}

}  // namespace

std::vector<std::vector<Eigen::Vector2d>> contour_lines(const GridField& field, double value) {
    const auto list = pieces(field, value);
    std::multimap<Side, size_t> at_side;
    for (size_t k = 0; k < list.size(); ++k)
        for (const Crossing& end : list[k]) at_side.emplace(end.side, k);
    std::vector<bool> used(list.size(), false);
    // Goes on from a crossing through unused pieces, adding their far ends.
    const auto follow = [&](Side side, std::vector<Eigen::Vector2d>& line) {
        for (bool more = true; more;) {
            more = false;
            const auto [from, to] = at_side.equal_range(side);
            for (auto entry = from; entry != to && !more; ++entry) {
                const size_t k = entry->second;
                if (used[k]) continue;
                used[k] = more = true;
                const Crossing& far = list[k][0].side == side ? list[k][1] : list[k][0];
                line.push_back(far.point);
                side = far.side;
            }
        }
    };
    std::vector<std::vector<Eigen::Vector2d>> lines;
    for (size_t k = 0; k < list.size(); ++k) {
        if (used[k]) continue;
        used[k] = true;
        std::vector<Eigen::Vector2d> back = {list[k][0].point}, line = {list[k][1].point};
        follow(list[k][0].side, back);
        follow(list[k][1].side, line);
        line.insert(line.begin(), back.rbegin(), back.rend());
        lines.push_back(std::move(line));
    }
    return lines;
}

}  // namespace swale
