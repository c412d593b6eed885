#pragma once

#include "io/picture/drawing.h"

#include <Eigen/Core>

#include <array>
#include <string>
#include <vector>

namespace swale {

/// A triangle in space; values at its corners choose its colours by the scene's scale, or else it has one colour.
struct Facet3 {
    std::array<Eigen::Vector3d, 3> corners;
    std::array<double, 3> values = {};
    bool by_value = false;
    Colour colour = ink::steel;
};

/// A name at a place in space.
struct PlaceName {
    Eigen::Vector3d at;
    std::string text;
};

struct Scene {
    std::vector<Facet3> facets;
    std::vector<PlaceName> names = {};
    ColourScale scale;
    double turn = 0.6;  ///< of the eye about z, from looking along +y; towards the pulley [rad]
    double rise = 0.5;  ///< of the eye above the horizontal [rad]
};

/// The scene without perspective, hidden surfaces removed; the names stand above it with thin lines to their places.
Drawing draw(const Scene& scene, const std::string& title, double width);

}  // namespace swale
