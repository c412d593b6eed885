#pragma once

namespace swale {

/// Two lines that stand under every answer that could lead to work on a conveyor.
inline constexpr const char* cautions =
    "Lock out the drive, hold back stored belt tension and guard nip points before anyone works there.\n"
    "The belt maker's limits, local codes and a licensed engineer's judgement prevail over this result.\n";

}  // namespace swale
