#include "io/markup_text.h"

#include "io/terminal/plain_text.h"

#include <fmt/format.h>

namespace swale {

std::string with_visible_directions(const std::string& text) {
    std::string shown;
    for (size_t i = 0; i < text.size(); ++i) {
        const auto byte = [&](size_t k) { return i + k < text.size() ? static_cast<unsigned char>(text[i + k]) : 0u; };
        const unsigned code = 0x2000u + ((byte(1) & 0x3Fu) << 6u) + (byte(2) & 0x3Fu);
        const bool turns =
            byte(0) == 0xE2 && (byte(1) == 0x80 || byte(1) == 0x81) &&
            (code == 0x200E || code == 0x200F || (code >= 0x202A && code <= 0x202E) || (code >= 0x2066 && code <= 0x2069));
        if (turns) i += 2;
        shown += turns ? fmt::format("[U+{:04X}]", code) : std::string(1, text[i]);
    }
    return shown;
}

std::string escaped(const std::string& text) {
    std::string safe;
    for (const char letter : with_visible_directions(printable(text))) switch (letter) {
            case '&':
                safe += "&amp;";
                break;
            case '<':
                safe += "&lt;";
                break;
            case '>':
                safe += "&gt;";
                break;
            case '"':
                safe += "&quot;";
                break;
            case '\'':
                safe += "&#39;";
                break;
            default:
                safe += letter;
        }
    return safe;
}

}  // namespace swale
