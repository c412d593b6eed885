#include "io/belt_catalogue.h"

#include "io/belt_table.h"
#include "io/case_table.h"
#include "io/measured_table.h"
#include "io/near_miss.h"
#include "io/section_table.h"
#include "io/text_file.h"
#include "io/toml_document.h"
#include "materials/catalogue.h"

#include <algorithm>
#include <cctype>

namespace swale {
namespace {

/// In capitals, without blanks.
std::string folded(const std::string& designation) {
    std::string letters;
    for (const char c : designation)
        if (!std::isspace(static_cast<unsigned char>(c)))
            letters += static_cast<char>(std::toupper(static_cast<unsigned char>(c)));
    return letters;
}

/// The carcass of an entry: as another belt's, or a section outright.
Belt read_base(CaseTable& entry, double width) {
    const bool outright = entry.has("section"), alike = entry.has("like");
    if (!outright && !alike)
        entry.reject_missing("like", "a designation of swale's own catalogue like \"EP 800/4 6+3\", or a section outright");
    if (outright && alike) entry.reject("like", "both a belt that it is like and a section are given", "one of both");
    CaseTable section = entry.table("section", false);
    if (outright) return belt_of_section(section);
    return alike ? belt_of_designation(entry, "like", width) : Belt();
}

void name_source(Belt& belt, const std::string& source) {
    for (BeltDatum& datum : belt.data)
        if (datum.origin.grade == "given") datum.origin.source = source + " (" + datum.origin.source + ")";
}

Belt read_entry(CaseTable& entry, double width) {
    const std::string designation = entry.required_text("designation"), source = entry.required_text("source");
    Belt belt = read_base(entry, width);
    belt.width = width;
    read_measured(entry, belt);
    if (entry.has("troughability") && !entry.has("troughability_width"))
        entry.reject_missing("troughability_width",
                             "the width of the belt that was tested: the entry serves belts of any width");
    entry.finish();
    belt.designation = designation;
    name_source(belt, source);
    return belt;
}

}  // namespace

std::vector<Belt> read_belt_catalogue(const CatalogueFile& catalogue, double width) {
    const TomlNode document = read_document(catalogue.text, catalogue.file);
    Mistakes mistakes(catalogue.file);
    CaseTable root(document, "", mistakes);
    std::vector<Belt> belts;
    for (CaseTable& entry : root.tables("belt")) {
        Belt belt = read_entry(entry, width);
        if (!belt.designation.empty() && find_belt(belts, belt.designation))
            entry.reject("designation", "another belt has this designation", "each designation once");
        belts.push_back(std::move(belt));
    }
    if (!root.has("belt")) root.reject_missing("belt", "belts, each headed [[belt]]");
    root.finish();
    mistakes.throw_if_any();
    return belts;
}

const Belt* find_belt(const std::vector<Belt>& belts, const std::string& designation) {
    const auto found = std::find_if(belts.begin(), belts.end(),
                                    [&](const Belt& belt) { return folded(belt.designation) == folded(designation); });
    return found == belts.end() ? nullptr : &*found;
}

std::vector<std::string> designations_of(const std::vector<Belt>& belts) {
    std::vector<std::string> names;
    for (const Belt& belt : belts) names.push_back(belt.designation);
    return names;
}

std::string near_designation(const std::vector<Belt>& belts, const std::string& designation) {
    return near_miss(designation, designations_of(belts));
}

std::string not_among(const std::string& designation, const std::string& near) {
    return "belt '" + designation + "': neither your catalogue nor swale's has it, did you mean '" + near + "'?";
}

std::filesystem::path catalogue_path(const std::string& name, const std::string& case_file) {
    return std::filesystem::path(case_file).parent_path() / name;
}

std::optional<CatalogueFile> named_catalogue(const std::string& case_text, const std::string& case_file) {
    const TomlNode document = read_document(case_text, case_file);
    Mistakes unused(case_file);
    const std::optional<std::string> name = CaseTable(document, "", unused).table("belt", false).text("catalogue");
    if (!name) return std::nullopt;
    const std::filesystem::path path = catalogue_path(*name, case_file);
    return CatalogueFile{path.string(), read_text_file(path, belt_catalogue)};
}

}  // namespace swale
