#include "io/progress.h"

#include <fmt/format.h>
#include <unistd.h>
#include <cstdio>
#include <memory>

namespace swale {
namespace {

constexpr const char* wipe = "\r\033[K";

/// Owns the line: wiped at the end.
class ProgressLine {
  public:
    ProgressLine() = default;
    ProgressLine(const ProgressLine&) = delete;
    ProgressLine& operator=(const ProgressLine&) = delete;
    ~ProgressLine() { std::fputs(wipe, stderr); }

    void show(const std::string& text) const { std::fputs((wipe + text).c_str(), stderr); }
};

}  // namespace

std::string in_print(const ProgressEvent& event) {
    return fmt::format("{} \u00B7 {} \u00B7 iteration {} \u00B7 residual {:.1e}", event.state, event.phase, event.iteration,
                       event.residual);
}

ProgressListener terminal_progress() {
    if (isatty(STDERR_FILENO) == 0) return {};
    return [line = std::make_shared<ProgressLine>()](const ProgressEvent& event) { line->show(in_print(event)); };
}

}  // namespace swale
