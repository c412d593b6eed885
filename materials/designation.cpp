#include "materials/designation.h"

#include <algorithm>
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

    int integer(const std::string& what) { return value_of<int>(digits(what), what); }

    /// With a point or a comma before the decimals.
    double decimal(const std::string& what) {
        std::string written = digits(what);
        const bool decimals = at_ + 1 < text_.size() && (text_[at_] == '.' || text_[at_] == ',') && is_digit(text_[at_ + 1]);
        if (decimals) ++at_, written += "." + digits(what);
        return value_of<double>(written, what);
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
        if (at_ < text_.size())
            fail("nothing may follow the covers" + where() + ", a cover grade neither: it has no stiffness");
    }

    [[noreturn]] void fail(const std::string& why) const { throw BadDesignation("belt '" + text_ + "': " + why + form); }

  private:
    std::string digits(const std::string& what) {
        skip_blanks();
        const std::size_t start = at_;
        while (at_ < text_.size() && is_digit(text_[at_])) ++at_;
        if (at_ == start) fail(what + " is missing" + where());
        return text_.substr(start, at_ - start);
    }
    template <class Number>
    Number value_of(const std::string& written, const std::string& what) const {
        Number value{};
        const auto error = std::from_chars(written.data(), written.data() + written.size(), value).ec;
        if (error != std::errc{}) fail(what + " of '" + written + "' is out of range");
        return value;
    }
    void skip_blanks() {
        while (at_ < text_.size() && std::isspace(static_cast<unsigned char>(text_[at_]))) ++at_;
    }
    std::string where() const { return at_ < text_.size() ? " at '" + text_.substr(at_) + "'" : ""; }

    std::string text_;
    std::size_t at_ = 0;
};

// "4x200" or "200x4": plies times the strength of one.
void refuse_product(Reader& reader, const CarcassCode& carcass) {
    const bool times = reader.take('x') || reader.take('X') || reader.take('*') || (reader.take('\xC3') && reader.take('\x97'));
    if (!times) return;
    const int first = carcass.strength, second = reader.integer("the number after 'x'");
    const int plies = std::min(first, second), ply = std::max(first, second);
    const long long whole = static_cast<long long>(plies) * ply;
    reader.fail("plies times the strength of one are not read; the strength is that of the whole carcass: '" + carcass.family +
                " " + std::to_string(whole) + "/" + std::to_string(plies) + "'");
}

CarcassCode read_carcass(Reader& reader) {
    CarcassCode carcass;
    carcass.family = reader.capitals("the carcass code, such as EP or ST,");
    reader.take('-');
    carcass.strength = reader.integer("the breaking strength in N/mm");
    refuse_product(reader, carcass);
    if (reader.take('/'))
        carcass.plies = reader.integer("the number of plies after '/'");
    else if (reader.take('S') || reader.take('s'))
        carcass.plies = 1;  // solid woven
    return carcass;
}

}  // namespace

Designation parse_designation(const std::string& text) {
    Reader reader(text);
    Designation designation;
    designation.carcass = read_carcass(reader);
    reader.blank("a blank must stand between carcass and covers");
    designation.top_cover = reader.decimal("the top cover in mm");
    if (reader.take('/')) reader.fail("'/' counts plies; covers, in mm, are joined by '+': 6+3, not 6/3");
    if (!reader.take('+')) reader.fail("the bottom cover is missing: a '+' and its mm must follow the top cover");
    designation.bottom_cover = reader.decimal("the bottom cover in mm after '+'");
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
