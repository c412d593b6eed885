#include "io/utf8.h"

namespace swale {
namespace {

unsigned byte(std::string_view text, std::size_t at) {
    return at < text.size() ? static_cast<unsigned char>(text[at]) : 0;
}

/// Number of bytes that a sequence starting with `lead` has; 0 if none starts so. RFC 3629, section 4.
std::size_t length_by_lead(unsigned lead) {
    if (lead < 0x80) return 1;
    if (lead >= 0xC2 && lead <= 0xDF) return 2;
    if (lead >= 0xE0 && lead <= 0xEF) return 3;
    if (lead >= 0xF0 && lead <= 0xF4) return 4;
    return 0;
}

/// Overlong forms, surrogates and points beyond U+10FFFF, told by the second byte.
bool second_byte_allowed(unsigned lead, unsigned second) {
    if (lead == 0xE0) return second >= 0xA0;
    if (lead == 0xED) return second <= 0x9F;
    if (lead == 0xF0) return second >= 0x90;
    if (lead == 0xF4) return second <= 0x8F;
    return true;
}

bool well_formed(std::string_view text, std::size_t at, std::size_t length) {
    for (std::size_t i = 1; i < length; ++i)
        if ((byte(text, at + i) & 0xC0U) != 0x80U) return false;
    return length < 3 || second_byte_allowed(byte(text, at), byte(text, at + 1));
}

}  // namespace

std::size_t first_invalid_utf8(std::string_view text) {
    for (std::size_t at = 0; at < text.size();) {
        const std::size_t length = length_by_lead(byte(text, at));
        if (length == 0 || !well_formed(text, at, length)) return at;
        at += length;
    }
    return text.size();
}

}  // namespace swale
