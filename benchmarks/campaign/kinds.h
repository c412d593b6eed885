#pragma once

#include <string>

namespace swale::benchmark {

/// A word for a note of a converged state: "unstable antisymmetric", "far end", ...; "other: ..." for one not known here.
std::string kind_of_note(const std::string& note);

/// Grid and cause of a state that did not converge: "coarse grid: no step lowers the energy".
std::string kind_of_reason(const std::string& reason);

}  // namespace swale::benchmark
