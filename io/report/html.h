#pragma once

#include "io/picture/drawing.h"
#include "io/terminal/text_table.h"

#include <string>
#include <vector>

namespace swale {

/// Foreign text (a title, a name) inside markup: harmless, and of a direction of its own.
std::string foreign(const std::string& text);

/// Our own words with the signs that plain text has to do without: "<=" as one sign, "^3" raised.
std::string well_set(std::string text);

std::string paragraph(const std::string& text, const std::string& css_class = {});

/// A table; the first row is its head, the first column names the lines. One letter of `alignment` a column, 'l' or 'r', the
/// last for all further ones. `caption` says what it shows. Text only, made harmless here.
std::string html_table(const std::string& caption, const std::vector<TextRow>& rows, const std::string& alignment);

std::string html_list(const std::vector<std::string>& sentences);

/// A drawing with its caption; `name` is how the page's script finds it.
std::string figure(const Drawing& drawing, const std::string& caption, const std::string& name = {});

/// A section with its heading.
std::string section(const std::string& id, const std::string& heading, const std::string& body);

}  // namespace swale
