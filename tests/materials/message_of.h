#pragma once

#include <stdexcept>
#include <string>

/// The sentence of the exception that `action` throws, empty if it throws none.
template <class Exception, class Action>
std::string message_of(Action action) {
    try {
        action();
    } catch (const Exception& refused) {
        return refused.what();
    }
    return {};
}

inline bool contains(const std::string& text, const std::string& part) {
    return text.find(part) != std::string::npos;
}
