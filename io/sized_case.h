#pragma once

#include <string>

namespace swale {

/// The text of a case file with another distance in whole mm, its intermediate sets at the same shares of it; all else stands
/// as it was, comments too. The text must be a case that parses.
std::string with_distance(const std::string& text, double distance);

}  // namespace swale
