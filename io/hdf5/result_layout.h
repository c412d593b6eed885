#pragma once

/// Words of the result file that both its writer and its reader need.
namespace swale::result_layout {

inline constexpr const char* format = "swale result";
inline constexpr int format_version = 1;
inline constexpr const char* converged = "converged";
inline constexpr const char* not_converged = "not converged";

}  // namespace swale::result_layout
