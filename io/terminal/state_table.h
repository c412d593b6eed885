#pragma once

#include "solver/transition_result.h"

#include <functional>
#include <string>
#include <vector>

namespace swale {

/// One line of a table with a column for every state.
struct StateLine {
    std::vector<std::string> head;                        ///< leading cells
    std::function<std::string(const StateResult&)> cell;  ///< asked of states with a solution only
};

/// Lines by states; as many tables below each other as the line length needs. `head` names the leading columns.
std::string state_table(const std::vector<std::string>& head, const std::vector<StateLine>& lines,
                        const std::vector<StateResult>& states);

}  // namespace swale
