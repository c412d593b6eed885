#pragma once

namespace swale {

/// [mm/s^2]
inline constexpr double gravity = 9806.65;

}  // namespace swale
