#include "solver/wear/return_supports.h"

namespace swale {

namespace {

enum { x, y, z };

class Planes {
  public:
    explicit Planes(const Patch& patch)
        : patch_(patch), supports_(patch.points()), width_(patch.along.size()), length_(patch.across.size()) {}

    void centre_line() {
        for (int j = 0; j < length_; ++j) {
            level({patch_.index(1, j), y}, patch_.index(0, j));
            level({patch_.index(1, j), z}, patch_.index(0, j));
            odd(patch_.index(0, j), patch_.index(1, j), patch_.index(2, j), x, patch_.along);
        }
    }

    // No force acts across on a frictionless roll: where the belt is held sideways takes no load.
    void hold_sideways() { supports_.fix({patch_.index(width_ / 2, 0), x}, patch_.along.greville()[width_ / 2]); }

    void roll() {
        for (int i = 0; i < width_; ++i) {
            level({patch_.index(i, 1), x}, patch_.index(i, 0));
            level({patch_.index(i, 1), z}, patch_.index(i, 0));
            odd(patch_.index(i, 0), patch_.index(i, 1), patch_.index(i, 2), y, patch_.across);
        }
    }

    void mid_span(double place) {
        const int last = length_ - 1;
        for (int i = 0; i < width_; ++i) {
            level({patch_.index(i, last - 1), x}, patch_.index(i, last));
            level({patch_.index(i, last - 1), z}, patch_.index(i, last));
            supports_.fix({patch_.index(i, last), y}, place);
        }
    }

    Supports close() {
        supports_.close();
        return std::move(supports_);
    }

  private:
    void level(Freedom freedom, int master) { supports_.tie(freedom, {{{master, freedom.component}, 1}}); }

    // Zero at the plane with zero curvature, so that the mirror image is C2.
    void odd(int first, int second, int third, int component, const CubicBasis& basis) {
        const BasisValues at_plane = basis.at(basis.begin());
        supports_.fix({first, component}, 0);
        supports_.tie({second, component}, {{{third, component}, -at_plane.curvature[2] / at_plane.curvature[1]}});
    }

    const Patch& patch_;
    Supports supports_;
    int width_, length_;
};

}  // namespace

Supports return_supports(const Patch& patch, double mid_span) {
    Planes planes(patch);
    if (patch.along.begin() == 0)
        planes.centre_line();
    else
        planes.hold_sideways();
    planes.roll();
    planes.mid_span(mid_span);
    return planes.close();
}

}  // namespace swale
