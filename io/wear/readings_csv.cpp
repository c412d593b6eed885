#include "io/wear/readings_csv.h"

#include "io/input_error.h"
#include "io/near_miss.h"
#include "io/quantity.h"
#include "io/toml_node.h"
#include "io/wear/marks.h"
#include "io/wear/places.h"

#include <algorithm>
#include <limits>
#include <optional>
#include <sstream>

namespace swale {
namespace {

constexpr std::size_t most_lines = 5000;
constexpr const char* headers = "a first line \"roll,at [mm],depth [mm]\" or \"roll,from [mm],to [mm],mark\"";

std::string trimmed(const std::string& text) {
    const auto begin = text.find_first_not_of(" \t\r"), end = text.find_last_not_of(" \t\r");
    return begin == std::string::npos ? "" : text.substr(begin, end - begin + 1);
}

std::vector<std::string> cells_of(const std::string& line) {
    std::vector<std::string> cells;
    std::istringstream stream(line);
    for (std::string cell; std::getline(stream, cell, ',');) cells.push_back(trimmed(cell));
    if (!line.empty() && line.back() == ',') cells.emplace_back();
    return cells;
}

// "depth [mm]": name and unit.
struct Column {
    std::string name, unit;
};

Column column_of(const std::string& cell) {
    const auto open = cell.find('['), close = cell.find(']');
    if (open == std::string::npos || close == std::string::npos || close < open) return {cell, ""};
    return {trimmed(cell.substr(0, open)), trimmed(cell.substr(open + 1, close - open - 1))};
}

class Reader {
  public:
    Reader(const std::string& file, double half) : mistakes_(file), half_(half) {}

    void read(const std::string& text) {
        const bool marked = text.starts_with("\xEF\xBB\xBF");  // as spreadsheets write it
        std::istringstream stream(marked ? text.substr(3) : text);
        std::size_t number = 0;
        for (std::string line; std::getline(stream, line);) {
            line_ = static_cast<int>(++number);
            if (number > most_lines) return mistakes_.add(line_, "", "too many lines", "", "up to 5000");
            const std::string content = trimmed(line);
            if (content.empty() || content.front() == '#') continue;
            if (columns_.empty()) {
                if (!read_header(content)) return;
            } else {
                read_line(content);
            }
        }
        if (columns_.empty())
            mistakes_.add(0, "", "no line names the columns", "", headers);
        else if (rolls_.empty())
            mistakes_.add(line_, "", "no reading under the names of the columns", "", "a line for each reading");
    }

    std::vector<SurveyedRoll> finish() {
        mistakes_.throw_if_any();
        return std::move(rolls_);
    }

  private:
    bool read_header(const std::string& line) {
        for (const std::string& cell : cells_of(line)) columns_.push_back(column_of(cell));
        std::vector<std::string> names;
        for (const Column& column : columns_) names.push_back(column.name);
        const std::vector<std::string> depths{"roll", "at", "depth"}, bands{"roll", "from", "to", "mark"};
        if (names != depths && names != bands) {
            mistakes_.add(line_, "", "unknown columns", on_one_line(line), headers);
            return false;
        }
        for (const Column& column : columns_)
            if (column.name != "roll" && column.name != "mark" && !has_unit(column)) return false;
        return true;
    }

    bool has_unit(const Column& column) {
        try {
            read_quantity("1 " + column.unit, Kind::length);
            return true;
        } catch (const BadQuantity&) {
            mistakes_.add(line_, column.name,
                          column.unit.empty() ? "a column of lengths without its unit" : "no unit of length",
                          on_one_line(column.unit), column.name + " [mm]");
            return false;
        }
    }

    void read_line(const std::string& line) {
        const std::vector<std::string> cells = cells_of(line);
        if (cells.size() != columns_.size())
            return mistakes_.add(line_, "", "as many cells as columns are wanted", on_one_line(line),
                                 std::to_string(columns_.size()) + " cells");
        if (cells[0].empty()) return mistakes_.add(line_, "roll", "the roll has no name", "", "a name");
        SurveyedRoll& roll = roll_named(on_one_line(cells[0]));
        const double first = length(cells, 1), second = length(cells, 2);
        check_place(cells, 1, first);
        if (columns_.size() == 3) {
            if (!allowed_depth(second)) reject(cells, 2, "not a depth of wear", depth_text);
            return roll.depths.push_back({first, second});
        }
        check_place(cells, 2, second);
        if (first >= second) reject(cells, 2, "the band has no length", "more than " + cells[1]);
        if (const std::optional<Mark> mark = mark_of(cells[3]))
            roll.bands.push_back({first, second, *mark});
        else
            mistakes_.add(line_, "mark", "unknown mark", on_one_line(cells[3]), listed(mark_words(), false));
    }

    void reject(const std::vector<std::string>& cells, std::size_t k, const std::string& problem, const std::string& allowed) {
        mistakes_.add(line_, columns_[k].name, problem, on_one_line(cells[k]), allowed);
    }

    void check_place(const std::vector<std::string>& cells, std::size_t k, double place) {
        if (!on_roll(place, half_)) reject(cells, k, off_roll_text(place), roll_text(half_));
    }

    double length(const std::vector<std::string>& cells, std::size_t k) {
        try {
            return read_quantity(cells[k] + " " + columns_[k].unit, Kind::length);
        } catch (const BadQuantity& bad) {
            mistakes_.add(line_, columns_[k].name, bad.what(), on_one_line(cells[k]), "a number");
            return std::numeric_limits<double>::quiet_NaN();
        }
    }

    SurveyedRoll& roll_named(const std::string& name) {
        const auto found =
            std::find_if(rolls_.begin(), rolls_.end(), [&](const SurveyedRoll& roll) { return roll.name == name; });
        if (found != rolls_.end()) return *found;
        rolls_.push_back({name, {}, {}});
        return rolls_.back();
    }

    Mistakes mistakes_;
    std::vector<Column> columns_;
    std::vector<SurveyedRoll> rolls_;
    double half_;
    int line_ = 0;
};

}  // namespace

std::vector<SurveyedRoll> read_readings_csv(const std::string& text, const std::string& file, double half) {
    Reader reader(file, half);
    reader.read(text);
    return reader.finish();
}

}  // namespace swale
