#pragma once

#include <optional>
#include <ostream>
#include <string>

namespace swale {

struct BeltsRequest {
    std::optional<std::string> designation;  ///< absent: the families of the catalogue
    std::optional<std::string> catalogue;    ///< a user's file of belts, looked up first
    bool json = false;
};

/// `swale belts`: what the catalogue knows, or the data sheet of one belt with the origin of each number. Returns 0; throws
/// BadDesignation, InputErrors for mistakes in the user's file.
int run_belts(const BeltsRequest& request, std::ostream& answer);

}  // namespace swale
