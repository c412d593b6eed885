#include "io/chart/study_table.h"

#include "io/file_error.h"
#include "io/hdf5/reader.h"

#include <algorithm>
#include <cmath>
#include <utility>

namespace swale {

namespace {

namespace fs = std::filesystem;
using Places = std::map<int, std::size_t>;  // of a case among all, by its number

int number_at(const std::vector<double>& cases, std::size_t k) {
    return static_cast<int>(std::lround(cases.at(k)));
}

// The file's tables have a row a case, in one order.
Places read_cases(const Hdf5Source& root, StudyTable& table) {
    const Hdf5Source cases = root.group("cases"), inputs = root.group("inputs");
    const std::vector<double> numbers = cases.numbers("case"), widths = cases.numbers("belt_width_mm"),
                              distances = cases.numbers("distance_mm");
    const std::vector<std::string> status = cases.texts("status"), reasons = cases.texts("reason");
    std::vector<std::vector<std::string>> labels;
    for (const std::string& column : root.texts("input_columns")) labels.push_back(inputs.texts(column));
    Places places;
    for (std::size_t k = 0; k < numbers.size(); ++k) {
        ChartedCase charted{{}, widths.at(k), {distances.at(k), "", {}}, {}};
        for (const auto& column : labels) charted.labels.push_back(column.at(k));
        if (status.at(k) != "solved") charted.row.why_none = status[k] + ", " + reasons.at(k);
        places[number_at(numbers, k)] = table.cases.size();
        table.cases.push_back(std::move(charted));
    }
    return places;
}

/// Largest edge tension by case and state, for what has a limit of zero [N/mm].
std::map<std::pair<int, std::string>, double> read_states(const Hdf5Source& root, const Places& places, StudyTable& table) {
    const Hdf5Source states = root.group("states");
    const std::vector<double> numbers = states.numbers("case"), tensions = states.numbers("edge_tension_max_N_per_mm");
    const std::vector<std::string> names = states.texts("state"), status = states.texts("status"),
                                   reasons = states.texts("reason");
    std::map<std::pair<int, std::string>, double> edge;
    for (std::size_t k = 0; k < numbers.size(); ++k) {
        const int number = number_at(numbers, k);
        edge[{number, names.at(k)}] = tensions.at(k);
        if (status.at(k) != "converged") table.cases[places.at(number)].row.why_none = "not converged, " + reasons.at(k);
    }
    return edge;
}

/// A row of /criteria.
struct Judged {
    double value = 0, limit = 0, error = 0;
    bool passed = false;
};

// As sizing counts it: of a lower limit, which may be zero, in shares of the largest edge tension.
double share_left(const Judged& judged, double edge_tension) {
    const bool at_least = judged.passed ? judged.value > judged.limit : judged.value < judged.limit;
    const double scale = std::abs(at_least ? edge_tension : judged.limit);
    const double left = at_least ? judged.value - judged.limit : judged.limit - judged.value;
    return (left - (std::isfinite(judged.error) ? judged.error : 0)) / (scale > 0 ? scale : 1);
}

void read_criteria(const Hdf5Source& root, const Places& places, StudyTable& table) {
    const auto edge = read_states(root, places, table);
    const Hdf5Source criteria = root.group("criteria");
    const std::vector<double> numbers = criteria.numbers("case"), values = criteria.numbers("value"),
                              limits = criteria.numbers("limit"), errors = criteria.numbers("error"),
                              passed = criteria.numbers("passed");
    const std::vector<std::string> names = criteria.texts("name"), states = criteria.texts("state");
    for (std::size_t k = 0; k < numbers.size(); ++k) {
        if (!std::isfinite(passed.at(k))) continue;  // not judged
        const int number = number_at(numbers, k);
        const Judged judged{values.at(k), limits.at(k), errors.at(k), passed[k] != 0};
        const auto found = edge.find({number, states.at(k)});
        table.cases[places.at(number)].row.left[names.at(k) + " in \"" + states[k] + "\""] =
            share_left(judged, found == edge.end() ? NAN : found->second);
    }
}

void read_hand_methods(const Hdf5Source& root, const Places& places, StudyTable& table) {
    const Hdf5Source methods = root.group("hand_methods");
    const std::vector<double> numbers = methods.numbers("case"), distances = methods.numbers("minimum_distance_mm");
    const std::vector<std::string> names = methods.texts("name");
    for (std::size_t k = 0; k < numbers.size(); ++k) {
        table.cases[places.at(number_at(numbers, k))].hand_methods[names.at(k)] = distances.at(k);
        if (std::ranges::find(table.hand_methods, names[k]) == table.hand_methods.end()) table.hand_methods.push_back(names[k]);
    }
}

}  // namespace

std::size_t StudyTable::axis(const std::string& name) const {
    return static_cast<std::size_t>(std::ranges::find(axes, name) - axes.begin());
}

StudyTable read_study_table(const fs::path& path) {
    if (!fs::is_regular_file(path)) throw FileError(path, "is not there");
    const Hdf5Silence silence;
    const Hdf5Source root(path);
    if (!root.has_attribute("format") || root.text_attribute("format") != "swale study")
        throw FileError(path, "is no database of a study");
    if (!root.has_link("input_columns"))
        throw FileError(path, "was written by an older version, without what a chart needs; let `swale study` write it anew");
    StudyTable table{root.text_attribute("title"), root.texts("axes"), {}, {}};
    const Places places = read_cases(root, table);
    read_criteria(root, places, table);
    read_hand_methods(root, places, table);
    return table;
}

}  // namespace swale
