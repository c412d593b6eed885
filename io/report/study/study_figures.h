#pragma once

#include "io/study/study_record.h"

#include <nlohmann/json.hpp>

#include <string>

namespace swale {

/// The pictures of a study as markup, and what the page's script needs of them.
struct StudyFigures {
    std::string opening;  ///< for the first screen; empty: there is no picture
    std::string section;  ///< all of them, or why there are none
    nlohmann::ordered_json charts = nlohmann::ordered_json::object();
};

/// Design charts and maps as `swale chart` draws them, as many as a page can hold; of a study without a distance among its
/// axes what is used of the limits over its first axis of numbers.
StudyFigures study_figures(const StudyRecord& record);

}  // namespace swale
