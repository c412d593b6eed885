#include "io/terminal/plain_text.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <sstream>

namespace swale {

namespace {

bool continues(char byte) {
    return (static_cast<unsigned char>(byte) & 0xC0) == 0x80;
}  // UTF-8, all but the first byte

}  // namespace

std::string printable(const std::string& text) {
    std::string clean;
    for (size_t i = 0; i < text.size(); ++i) {
        const auto byte = static_cast<unsigned char>(text[i]);
        const bool upper_control = byte == 0xC2 && i + 1 < text.size() && static_cast<unsigned char>(text[i + 1]) < 0xA0;
        if (upper_control) ++i;  // U+0080 to U+009F
        clean += byte < 0x20 || byte == 0x7F || upper_control ? ' ' : text[i];
    }
    return clean;
}

int text_width(const std::string& text) {
    return static_cast<int>(std::count_if(text.begin(), text.end(), [](char byte) { return !continues(byte); }));
}

std::string shortened(const std::string& text, int width) {
    if (text_width(text) <= width) return text;
    size_t end = 0;
    for (int letters = 0; end < text.size(); ++end)
        if (!continues(text[end]) && ++letters > width - 2) break;
    return text.substr(0, end).append("..");
}

std::string wrapped(const std::string& text, int indent) {
    std::istringstream words(printable(text));
    std::string lines, word;
    int column = indent;
    while (words >> word) {
        word = shortened(word, line_length - indent);
        const int width = text_width(word);
        if (column > indent && column + 1 + width > line_length) {
            lines += '\n';
            lines.append(static_cast<size_t>(indent), ' ');
            column = indent;
        } else if (column > indent) {
            lines += ' ';
            ++column;
        }
        lines += word;
        column += width;
    }
    lines += '\n';
    return lines;
}

std::string significant(double value, int digits) {
    if (!std::isfinite(value)) return "-";
    if (value == 0) return "0";
    const int magnitude = static_cast<int>(std::floor(std::log10(std::abs(value))));
    return fmt::format("{:.{}f}", value, std::clamp(digits - 1 - magnitude, 0, 8));
}

}  // namespace swale
