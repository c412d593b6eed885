#pragma once

#include <optional>
#include <ostream>
#include <string>

namespace swale {

struct BeltsRequest {
    std::optional<std::string> designation;  ///< absent: the families of the catalogue
    bool json = false;
};

/// `swale belts`: what the catalogue knows, or the data sheet of one belt with the origin of each number. Returns 0; throws
/// BadDesignation.
int run_belts(const BeltsRequest& request, std::ostream& answer);

}  // namespace swale
