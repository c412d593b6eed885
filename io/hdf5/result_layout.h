#pragma once

/// Words of the result file that both its writer and its reader need.
namespace swale::result_layout {

inline constexpr const char* format = "swale result";
inline constexpr int format_version = 1;
inline constexpr const char* converged = "converged";
inline constexpr const char* not_converged = "not converged";
inline constexpr const char* symmetric_mode = "mode_symmetric";
inline constexpr const char* antisymmetric_mode = "mode_antisymmetric";

}  // namespace swale::result_layout
