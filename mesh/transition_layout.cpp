#include "mesh/transition_layout.h"

#include <cmath>

namespace swale {

double TransitionLayout::trough_depth() const {
    return (belt_width / 2 - junction()) * std::sin(trough.angle);
}

}  // namespace swale
