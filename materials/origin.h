#pragma once

#include <optional>
#include <string>
#include <vector>

namespace swale {

/// Where a number comes from. `grade` is one word of the list below, `source` the text in print (author, table, page).
///   "given"            the user wrote it in the case file
///   "published"        read in the named source
///   "derived"          computed from other entries by the named rule
///   "common practice"  a fact of the trade without a source
///   "from memory"      remembered; `source` states the confidence
struct Origin {
    std::string grade;
    std::string source;
};

/// What literature or construction leave open of a number, ends included, in its unit of print.
struct Range {
    double low = 0;
    double high = 0;
    std::string source;  ///< how the ends come about
};

/// One number of a belt with its unit in print ("N/mm", "mm") and its origin, as a data sheet would list it.
struct BeltDatum {
    std::string name;  ///< the key of the case file where there is one: "A11", "thickness", "rated_tension"
    double value = 0;  ///< in `unit`, not in the internal units: this is for people
    std::string unit;
    Origin origin;
    std::optional<Range> range = {};  ///< absent: given, or not known to be uncertain
};

using DataSheet = std::vector<BeltDatum>;

}  // namespace swale
