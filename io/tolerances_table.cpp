#include "io/tolerances_table.h"

#include "io/toml_document.h"

namespace swale {

namespace {

constexpr Allowed share_range = {Kind::percentage, 0, 90}, length_range = {Kind::length, 0, 1000},
                  angle_range = {Kind::angle, 0, 20}, wanted_range = {Kind::percentage, 0.01, 50};

}  // namespace

Tolerances read_tolerances(CaseTable table) {
    Tolerances t;
    t.tension = table.quantity("tension", share_range).value_or(0);
    t.membrane_stiffness = table.quantity("membrane_stiffness", share_range).value_or(0);
    t.bending_stiffness = table.quantity("bending_stiffness", share_range).value_or(0);
    t.mass = table.quantity("mass", share_range).value_or(0);
    t.distance = table.quantity("distance", length_range).value_or(0);
    t.lift = table.quantity("lift", length_range).value_or(0);
    t.idler_place = table.quantity("idler_place", length_range).value_or(0);
    t.idler_angle = table.quantity("idler_angle", angle_range).value_or(0);
    t.idler_lift = table.quantity("idler_lift", length_range).value_or(0);
    t.exceed = table.quantity("exceed", wanted_range).value_or(t.exceed);
    table.finish();
    return t;
}

Tolerances tolerances_of(const std::string& case_text, const std::string& file) {
    const TomlNode document = read_document(case_text, file);
    Mistakes mistakes(file);
    CaseTable table(document, "", mistakes);
    const Tolerances tolerances = read_tolerances(table.table("tolerances", true));
    if (mistakes.none() && !tolerances.any())
        table.table("tolerances", true).reject_missing("tension", "at least one tolerance above zero, as tension = \"10 %\"");
    mistakes.throw_if_any();
    return tolerances;
}

}  // namespace swale
