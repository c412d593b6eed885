#pragma once

#include <string>

namespace swale {

/// Text as it may stand in an HTML or SVG document: & < > " ' written out, control characters left out.
std::string escaped(const std::string& text);

/// A whole HTML document, self-contained; `body` is HTML, `title` plain text.
std::string html_page(const std::string& title, const std::string& body);

}  // namespace swale
