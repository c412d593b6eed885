#include "io/case_file.h"

#include "io/belt_table.h"
#include "io/case_table.h"
#include "io/layout_tables.h"
#include "io/limits_table.h"
#include "io/load_table.h"
#include "io/section_table.h"
#include "io/size_table.h"
#include "io/solve_table.h"
#include "io/survey_table.h"
#include "io/tension_table.h"
#include "io/text_file.h"
#include "io/tolerances_table.h"
#include "io/toml_document.h"

namespace swale {

TransitionCase parse_case(const std::string& text, const std::string& file, const std::optional<std::string>& catalogue) {
    const TomlNode document = read_document(text, file);
    Mistakes mistakes(file);
    CaseTable table(document, "", mistakes);
    TransitionCase result;
    result.title = table.text("title").value_or(std::filesystem::path(file).stem().string());
    result.belt = read_belt(table.table("belt", true), {file, catalogue});
    result.layout = read_layout(table, result.belt);
    if (std::optional<TransitionLayout> surveyed = read_survey(table, result.layout)) {
        result.drawn = std::move(result.layout);
        result.layout = *std::move(surveyed);
    }
    check_foundation(table.table("belt", false), result.layout);
    result.bulk = read_load(table, result.layout);
    result.limits = read_limits(table.table("limits", false), default_limits(result.belt));
    result.states = read_states(table, result.layout.trough.support, result.limits, result.bulk.has_value());
    result.settings = read_settings(table.table("solve", false), result.layout);
    read_size_table(table.table("size", false), result.layout);  // of `swale size`; here only looked through
    read_tolerances(table.table("tolerances", false));           // of `swale spread`
    check_lift_off(table.table("limits", false), result.layout);
    table.finish();
    mistakes.throw_if_any();
    return result;
}

TransitionCase read_case(const std::filesystem::path& path) {
    return parse_case(read_text_file(path), path.string());
}

}  // namespace swale
