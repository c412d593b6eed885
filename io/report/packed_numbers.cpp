#include "io/report/packed_numbers.h"

#include "io/picture/base64.h"

#include <zlib.h>

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <stdexcept>

namespace swale {

namespace {

std::string deflated(const std::string& bytes) {
    uLongf length = compressBound(bytes.size());
    std::string packed(length, '\0');
    const int status = compress2(reinterpret_cast<Bytef*>(packed.data()), &length, reinterpret_cast<const Bytef*>(bytes.data()),
                                 bytes.size(), 6);
    if (status != Z_OK) throw std::runtime_error("the data of a report can't be compressed");
    packed.resize(length);
    return packed;
}

struct Span {
    double low = 0, high = 0;
};

Span span_of(const std::vector<double>& numbers) {
    Span span{INFINITY, -INFINITY};
    for (const double number : numbers) {
        if (!std::isfinite(number)) continue;
        span.low = std::min(span.low, number);
        span.high = std::max(span.high, number);
    }
    return span.low <= span.high ? span : Span{};
}

}  // namespace

nlohmann::ordered_json packed(const std::vector<double>& numbers, size_t row, unsigned levels) {
    const Span span = span_of(numbers);
    const double step = span.high > span.low ? (span.high - span.low) / levels : 1;
    std::vector<std::uint16_t> steps;
    for (const double number : numbers)
        steps.push_back(static_cast<std::uint16_t>(std::isfinite(number) ? std::lround((number - span.low) / step) : 0));
    std::string low_bytes, high_bytes;
    for (size_t k = 0; k < steps.size(); ++k) {
        const unsigned before = k == 0 ? 0u : k % row == 0 ? steps[k - row] : steps[k - 1];
        const unsigned difference = (steps[k] - before) & 0xFFFFu;
        low_bytes += static_cast<char>(difference & 0xFFu);
        high_bytes += static_cast<char>(difference >> 8u);
    }
    return {{"low", span.low}, {"high", span.high}, {"levels", levels}, {"data", base64(deflated(low_bytes + high_bytes))}};
}

}  // namespace swale
