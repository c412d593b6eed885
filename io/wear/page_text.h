#pragma once

#include <string>

namespace swale {

/// A whole HTML document, self-contained, in the look of the other reports; `title` is plain text, `body` HTML.
std::string html_page(const std::string& title, const std::string& main_class, const std::string& body);

}  // namespace swale
