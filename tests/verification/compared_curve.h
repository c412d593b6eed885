#pragma once

#include "tests/verification/reference.h"

#include <string>

namespace swale::verification {

/// A curve of ours with the points of a reference at the same abscissae, both on logarithmic axes.
class ComparedCurve {
  public:
    ComparedCurve(const std::string& picture, const std::string& name, const std::string& x_label, const std::string& y_label);
    void add(double at, double expected, double measured);
    void draw_both() const;

  private:
    Curve reference_, ours_;
};

}  // namespace swale::verification
