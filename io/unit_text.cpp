#include "io/unit_text.h"

#include "io/quantity.h"

#include <array>
#include <map>
#include <utility>

namespace swale {
namespace {

/// Characters beyond ASCII that people type into units, in the plain form.
std::string plain(std::string text) {
    static const std::array<std::pair<std::string, std::string>, 6> forms = {
        {{"\u00B2", "^2"}, {"\u00B3", "^3"}, {"\u00B5", "u"}, {"\u03BC", "u"}, {"\u00B7", "."}, {"\u00B0", "degree"}}};
    for (const auto& [from, to] : forms)
        for (auto at = text.find(from); at != std::string::npos; at = text.find(from)) text.replace(at, from.size(), to);
    return text;
}

/// Units of the trade that the unit library does not know, or knows by another name.
UnitFactors in_library_terms(const UnitFactor& factor) {
    static const std::map<std::string, UnitFactors> terms = {{"deg", {{"degree", 1}}},
                                                             {"lbs", {{"lb", 1}}},
                                                             {"kp", {{"kgf", 1}}},
                                                             {"pli", {{"lbf", 1}, {"in", -1}}},
                                                             {"piw", {{"lbf", 1}, {"in", -1}}}};
    const auto term = terms.find(factor.symbol);
    if (term == terms.end()) return {factor};
    UnitFactors factors = term->second;
    for (UnitFactor& part : factors) part.power *= factor.power;
    return factors;
}

bool is_letter(char c) {
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || c == '%' || c == '_';
}
bool is_digit(char c) {
    return c >= '0' && c <= '9';
}

/// Reads a unit from left to right.
class UnitReader {
  public:
    explicit UnitReader(std::string text) : text_(std::move(text)) {}

    UnitFactors read() {
        UnitFactors factors;
        int sign = 1;
        do {
            for (const UnitFactor& factor : in_library_terms({symbol(), sign * power()})) factors.push_back(factor);
        } while (separator(sign));
        return factors;
    }

  private:
    char peek() const { return at_ < text_.size() ? text_[at_] : '\0'; }

    std::string symbol() {
        const std::size_t start = at_;
        while (is_letter(peek())) ++at_;
        if (at_ == start) throw BadQuantity("the unit \"" + text_ + "\" can't be read");
        return text_.substr(start, at_ - start);
    }

    int power() {
        if (peek() == '^') ++at_;
        const int sign = peek() == '-' ? -1 : 1;
        if (peek() == '-') ++at_;
        const bool written = at_ > 0 && !is_letter(text_[at_ - 1]);
        if (!is_digit(peek()) && written) throw BadQuantity("the unit \"" + text_ + "\" lacks a power");
        return is_digit(peek()) ? sign * (text_[at_++] - '0') : 1;
    }

    /// Steps over what joins two factors; false at the end. `sign` of the next power: -1 after "/".
    bool separator(int& sign) {
        if (at_ == text_.size()) return false;
        while (peek() == ' ') ++at_;
        sign = peek() == '/' ? -1 : 1;
        if (peek() == '/' || peek() == '.' || peek() == '*') ++at_;
        while (peek() == ' ') ++at_;
        return true;
    }

    std::string text_;
    std::size_t at_ = 0;
};

}  // namespace

UnitFactors split_unit(const std::string& text) {
    return UnitReader(plain(text)).read();
}

std::string join_unit(const UnitFactors& factors) {
    std::string text;
    for (const UnitFactor& factor : factors)
        text += (text.empty() ? "" : ".") + factor.symbol + (factor.power == 1 ? "" : std::to_string(factor.power));
    return text;
}

}  // namespace swale
