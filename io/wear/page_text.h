#pragma once

#include <string>

namespace swale {

/// A whole HTML document, self-contained; `body` is HTML, `title` plain text.
std::string html_page(const std::string& title, const std::string& body);

}  // namespace swale
