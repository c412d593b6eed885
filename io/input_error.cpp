#include "io/input_error.h"

#include <algorithm>
#include <utility>

namespace swale {
namespace {

std::string join_lines(const std::vector<InputError>& errors) {
    std::string text;
    for (const InputError& error : errors) text += (text.empty() ? "" : "\n") + error.text();
    return text;
}

std::vector<InputError> in_order_of_lines(std::vector<InputError> errors) {
    std::stable_sort(errors.begin(), errors.end(), [](const InputError& a, const InputError& b) { return a.line < b.line; });
    return errors;
}

}  // namespace

std::string InputError::text() const {
    std::string text = file;
    if (line > 0) text += ":" + std::to_string(line);
    if (!key.empty()) text += ": " + key;
    text += ": " + problem;
    if (!given.empty()) text += "; given " + given;
    if (!allowed.empty()) text += "; allowed: " + allowed;
    return text;
}

InputErrors::InputErrors(std::vector<InputError> errors) : std::runtime_error(join_lines(errors)), errors_(std::move(errors)) {}

Mistakes::Mistakes(std::string file) : file_(std::move(file)) {}

void Mistakes::add(int line, const std::string& key, const std::string& problem, const std::string& given,
                   const std::string& allowed) {
    const InputError error = {file_, line, key, problem, given, allowed};
    if (std::find(errors_.begin(), errors_.end(), error) == errors_.end()) errors_.push_back(error);
}

void Mistakes::throw_if_any() const {
    if (!none()) throw InputErrors(in_order_of_lines(errors_));
}

}  // namespace swale
