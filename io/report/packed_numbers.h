#pragma once

#include <nlohmann/json.hpp>

#include <vector>

namespace swale {

/// Numbers as a page takes them in: each as one of `levels` steps between the least and the largest of its row of fields, the
/// differences from one to the next as two bytes apart, compressed by zlib, in base64: {"low", "high", "levels", "data"}.
/// `row`: after so many numbers the difference is to the one a row before. Numbers that are none become the least.
nlohmann::ordered_json packed(const std::vector<double>& numbers, size_t row, unsigned levels = 65535);

}  // namespace swale
