#pragma once

#include <nlohmann/json.hpp>

#include <cmath>
#include <optional>

namespace swale {

/// A number, or null where it is none.
inline nlohmann::ordered_json json_number(double value) {
    return std::isfinite(value) ? nlohmann::ordered_json(value + 0.0) : nlohmann::ordered_json(nullptr);
}

inline nlohmann::ordered_json json_number(const std::optional<double>& value) {
    return value ? json_number(*value) : nlohmann::ordered_json(nullptr);
}

}  // namespace swale
