#include "io/toml_document.h"

#include "io/input_error.h"

namespace swale {

TomlNode read_document(const std::string& text, const std::string& file) {
    try {
        return read_toml(text);
    } catch (const TomlSyntaxError& error) {
        throw InputErrors({{file, error.line, "", std::string("this is not TOML: ") + error.what(), "", "TOML 1.0"}});
    }
}

}  // namespace swale
