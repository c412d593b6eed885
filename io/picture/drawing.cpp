#include "io/picture/drawing.h"

#include "io/terminal/plain_text.h"

namespace swale {

void Drawing::add(const Mark& mark) {
    marks.push_back(mark);
}

double words_width(const std::string& text, double size) {
    constexpr double mean_letter = 0.56;  // of the size; DejaVu Sans, mixed text
    return mean_letter * size * text_width(text);
}

}  // namespace swale
