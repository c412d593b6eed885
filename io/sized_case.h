#pragma once

#include "mesh/transition_layout.h"

#include <string>

namespace swale {

/// The text of a case file with another distance in whole mm, its intermediate sets at the same shares of it; all else stands
/// as it was, comments too. The text must be a case that parses.
std::string with_distance(const std::string& text, double distance);

/// The text of a case file with the distance, pulley lift and intermediate sets of another layout. Where only the distance
/// differs, by `with_distance`; otherwise written anew, without its comments.
std::string with_arrangement(const std::string& text, const TransitionLayout& before, const TransitionLayout& after);

}  // namespace swale
