#include "materials/designation.h"

#include <cctype>
#include <charconv>
#include <sstream>

namespace swale {
namespace {

constexpr auto form =
    "; write carcass, breaking strength in N/mm, plies if it has any, top + bottom cover in mm: "
    "'EP 800/4 6+3' or 'ST 1600 8+6'";

bool is_digit(char c) {
    return c >= '0' && c <= '9';
}

/// Walks through the text; `what` in the messages is what stood to be read.
class Reader {
  public:
    explicit Reader(const std::string& text) : text_(text) {}

    std::string capitals(const std::string& what) {
        skip_blanks();
        std::string letters;
        while (at_ < text_.size() && std::isalpha(static_cast<unsigned char>(text_[at_])))
            letters += static_cast<char>(std::toupper(static_cast<unsigned char>(text_[at_++])));
        if (letters.empty()) fail(what + " is missing" + where());
        return letters;
    }

    template <class Number>
    Number number(const std::string& what) {
        skip_blanks();
        if (at_ == text_.size() || !is_digit(text_[at_])) fail(what + " is missing" + where());
        Number value{};
        const char* begin = text_.data() + at_;
        const auto [end, error] = std::from_chars(begin, text_.data() + text_.size(), value);
        if (error != std::errc{}) fail(what + " is out of range" + where());
        at_ += static_cast<std::size_t>(end - begin);
        return value;
    }

    /// Takes the sign if it comes next, blanks aside; else stays where it is.
    bool take(char sign) {
        const std::size_t start = at_;
        skip_blanks();
        const bool comes = at_ < text_.size() && text_[at_] == sign;
        at_ = comes ? at_ + 1 : start;
        return comes;
    }

    void blank(const std::string& what) {
        if (at_ < text_.size() && !std::isspace(static_cast<unsigned char>(text_[at_]))) fail(what + where());
    }

    void end() {
        skip_blanks();
        if (at_ < text_.size()) fail("nothing may follow the covers" + where());
    }

    [[noreturn]] void fail(const std::string& why) const { throw BadDesignation("belt '" + text_ + "': " + why + form); }

  private:
    void skip_blanks() {
        while (at_ < text_.size() && std::isspace(static_cast<unsigned char>(text_[at_]))) ++at_;
    }
    std::string where() const { return at_ < text_.size() ? " at '" + text_.substr(at_) + "'" : ""; }

    std::string text_;
    std::size_t at_ = 0;
};

CarcassCode read_carcass(Reader& reader) {
    CarcassCode carcass;
    carcass.family = reader.capitals("the carcass code, such as EP or ST,");
    carcass.strength = reader.number<int>("the breaking strength in N/mm");
    if (reader.take('/')) carcass.plies = reader.number<int>("the number of plies after '/'");
    return carcass;
}

}  // namespace

Designation parse_designation(const std::string& text) {
    Reader reader(text);
    Designation designation;
    designation.carcass = read_carcass(reader);
    reader.blank("a blank must stand between carcass and covers");
    designation.top_cover = reader.number<double>("the top cover in mm");
    if (!reader.take('+')) reader.fail("the bottom cover is missing: a '+' and its mm must follow the top cover");
    designation.bottom_cover = reader.number<double>("the bottom cover in mm after '+'");
    reader.end();
    return designation;
}

std::string to_string(const CarcassCode& carcass) {
    std::ostringstream text;
    text << carcass.family << ' ' << carcass.strength;
    if (carcass.plies) text << '/' << *carcass.plies;
    return text.str();
}

std::string to_string(const Designation& designation) {
    std::ostringstream text;
    text.precision(15);
    text << to_string(designation.carcass) << ' ' << designation.top_cover << '+' << designation.bottom_cover;
    return text.str();
}

}  // namespace swale
