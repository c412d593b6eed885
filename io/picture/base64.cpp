#include "io/picture/base64.h"

namespace swale {

std::string base64(std::string_view bytes) {
    static constexpr char letters[] = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/";
    std::string text;
    text.reserve((bytes.size() + 2) / 3 * 4);
    for (size_t i = 0; i < bytes.size(); i += 3) {
        unsigned triple = 0;
        for (size_t k = 0; k < 3; ++k)
            triple = triple << 8 | (i + k < bytes.size() ? static_cast<unsigned char>(bytes[i + k]) : 0u);
        for (size_t k = 0; k < 4; ++k) text += i + k <= bytes.size() ? letters[triple >> (18 - 6 * k) & 63] : '=';
    }
    return text;
}

}  // namespace swale
