#pragma once

#include <string>
#include <string_view>

namespace swale {

/// One page of any of the program's reports, in the one look of all.
struct Page {
    std::string title;      ///< foreign text
    std::string question;   ///< in a sentence, foreign text
    std::string body;       ///< markup
    std::string data = {};  ///< JSON for the script; empty: a page without one
};

/// A whole HTML file in itself, with a policy that forbids any request and any script but the bundled one.
std::string page_html(const Page& page);

/// Text of several lines inside markup, for a <pre>.
std::string escaped_lines(std::string_view text);

}  // namespace swale
