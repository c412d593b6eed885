#pragma once

#include <ostream>
#include <string>
#include <vector>

namespace swale {

/// The whole program. `arguments` without the program's name; answers go to `out`, complaints to `err`. Returns the exit code:
///   0 done, no limit exceeded · 1 done, a limit is exceeded · 2 input or command line is wrong · 3 a state without a solution
///   · 4 a file can't be read or written, or a fault of the program.
int run_command_line(const std::vector<std::string>& arguments, std::ostream& out, std::ostream& err);

}  // namespace swale
