#pragma once

#include <cstdio>
#include <cstdlib>
#include <string>
#include <vector>

namespace swale::benchmark {

/// Arguments of a benchmark: plain ones in order, and options "--name value".
class Arguments {
  public:
    Arguments(int count, char** values) {
        for (int k = 1; k < count; ++k) all_.push_back(values[k]);
        for (std::size_t k = 0; k < all_.size(); ++k)
            if (all_[k].starts_with("--") && ++k == all_.size()) refuse("'" + all_.back() + "' needs a value");
    }

    /// Value of "--name", or the default.
    std::string option(const std::string& name, const std::string& otherwise) const {
        for (std::size_t k = 0; k + 1 < all_.size(); ++k)
            if (all_[k] == "--" + name) return all_[k + 1];
        return otherwise;
    }
    int option(const std::string& name, int otherwise) const { return number(option(name, std::to_string(otherwise))); }

    /// The k-th argument that is no option, or the default.
    int plain(int k, int otherwise) const {
        for (std::size_t i = 0; i < all_.size(); ++i) {
            if (all_[i].starts_with("--"))
                ++i;  // and its value
            else if (k-- == 0)
                return number(all_[i]);
        }
        return otherwise;
    }

  private:
    static int number(const std::string& text) {
        char* end = nullptr;
        const long value = std::strtol(text.c_str(), &end, 10);
        if (!text.empty() && *end == '\0') return static_cast<int>(value);
        refuse("'" + text + "' is no whole number");
    }

    [[noreturn]] static void refuse(const std::string& sentence) {
        std::fprintf(stderr, "%s; the options stand in benchmarks/README.md\n", sentence.c_str());
        std::exit(2);
    }

    std::vector<std::string> all_;
};

}  // namespace swale::benchmark
