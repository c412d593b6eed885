#include "io/belt_catalogue.h"

#include "io/case_file.h"
#include "io/command_line.h"
#include "io/input_error.h"
#include "materials/data_sheet.h"
#include "tests/io/bad_case.h"
#include "tests/io/scratch_folder.h"

#include <doctest/doctest.h>

#include <fstream>
#include <sstream>

namespace swale {
namespace {

const std::string catalogue = R"([[belt]]
designation = "Spare 900"
source = "certificate 17 of 2024"
like = "EP 800/4 6+3"
modulus = "7600 N/mm"
mass = "17 kg/m^2"
[[belt]]
designation = "Pier belt"
source = "data sheet of 2019"
rated_tension = "90 N/mm"
[belt.section]
kind = "textile"
thickness = "14 mm"
mass = "17 kg/m^2"
A11 = "9000 N/mm"
A22 = "2000 N/mm"
A12 = "500 N/mm"
A66 = "300 N/mm"
D11 = "15 N m"
D22 = "8 N m"
D12 = "2 N m"
D66 = "3 N m"
foundation = "2 N/mm^3"
)";

/// The sound case with that designation and a catalogue beside it.
std::string case_with(const std::string& designation) {
    return with_line(sound_case, 4, "designation = \"" + designation + "\"\ncatalogue = \"my-belts.toml\"");
}

Belt belt_of(const std::string& designation, const std::string& text = catalogue) {
    return parse_case(case_with(designation), "case.toml", text).belt;
}

std::string mistakes_in(const std::string& text) {
    try {
        read_belt_catalogue({"my-belts.toml", text}, 1200);
    } catch (const InputErrors& errors) {
        return errors.what();
    }
    return "";
}

bool holds(const std::string& text, const std::string& phrase) {
    return text.find(phrase) != std::string::npos;
}

}  // namespace

TEST_CASE("a belt of the user's catalogue has what its maker gives with the entry's source as origin") {
    const Belt spare = belt_of("spare900"), pier = belt_of("Pier belt");
    CHECK(spare.section.membrane(0, 0) == doctest::Approx(7600));
    CHECK(entry_of(spare.data, "A11").origin.grade == "given");
    CHECK(entry_of(spare.data, "A11").origin.source.starts_with("certificate 17 of 2024"));
    CHECK(entry_of(spare.data, "D22").origin.grade == "derived");
    CHECK(entry_of(spare.data, "D22").range.has_value());
    CHECK(pier.section.bending(1, 1) == doctest::Approx(8000));
    CHECK(pier.rated_tension.value() == doctest::Approx(90));
    CHECK(pier.width == doctest::Approx(1200));
    CHECK(entry_of(pier.data, "D22").origin.source.starts_with("data sheet of 2019"));
}

TEST_CASE("the user's catalogue goes before swale's and what the case measured before both") {
    const std::string text = with_line(catalogue, 2, "designation = \"EP 800/4 6+3\"");
    CHECK(belt_of("EP 800/4 6+3", text).section.membrane(0, 0) == doctest::Approx(7600));
    CHECK(belt_of("EP 1000/4 6+3", text).section.membrane(0, 0) == doctest::Approx(10000));
    const std::string measured = with_line(case_with("Spare 900"), 4, "designation = \"Spare 900\"\nmodulus = \"7000 N/mm\"");
    CHECK(parse_case(measured, "case.toml", catalogue).belt.section.membrane(0, 0) == doctest::Approx(7000));
}

TEST_CASE("an elongation in the case leaves a modulus of the user's catalogue and is held against it") {
    const auto stretched = [](const char* elongation) {
        const std::string text = with_line(case_with("Spare 900"), 4,
                                           std::string("designation = \"Spare 900\"\nelongation_at_reference = ") + elongation);
        return parse_case(text, "case.toml", catalogue).belt;
    };
    CHECK(stretched("\"1.5 %\"").section.membrane(0, 0) == doctest::Approx(7600));
    CHECK(stretched("\"1.5 %\"").warnings.empty());
    CHECK(stretched("\"0.9 %\"").warnings.size() == 1);
}

TEST_CASE("a mistake in the user's catalogue is named with that file and its line") {
    const auto with = [](int line, const std::string& replacement) {
        return mistakes_in(with_line(catalogue, line, replacement));
    };
    CHECK(mistakes_in(catalogue).empty());
    CHECK(holds(with(3, ""), "my-belts.toml:1: belt[1].source: missing"));
    CHECK(holds(with(2, ""), "my-belts.toml:1: belt[1].designation: missing"));
    CHECK(holds(with(4, ""), "my-belts.toml:1: belt[1].like: missing"));
    CHECK(holds(with(4, "like = \"EP 810/4 6+3\""), "my-belts.toml:4: belt[1].like: belt 'EP 810/4 6+3': no known carcass"));
    CHECK(holds(with(5, "modulus = 7600"), "my-belts.toml:5: belt[1].modulus: a bare number"));
    CHECK(holds(with(6, "width = \"1200 mm\""), "my-belts.toml:6: belt[1].width: unknown key"));
    CHECK(holds(with(8, "designation = \"SPARE 900\""),
                "my-belts.toml:8: belt[2].designation: another belt has this designation"));
    CHECK(holds(with(9, "source = \"x\"\nlike = \"ST 1600 8+6\""), "my-belts.toml:10: belt[2].like: both"));
    CHECK(holds(with(17, "A12 = \"5000 N/mm\""), "belt[2].section.A12: the section is not positive definite"));
    CHECK(holds(with(1, "[[belt"), "my-belts.toml:1: this is not TOML"));
    CHECK(holds(mistakes_in("# none\n"), "belts, each headed [[belt]]"));
}

TEST_CASE("a designation that neither catalogue has is refused with those of the user's") {
    try {
        belt_of("Spare 901");
        FAIL("not refused");
    } catch (const InputErrors& errors) {
        CHECK(errors.errors().front().key == "belt.designation");
        CHECK(holds(errors.what(), "\"Spare 900\" or \"Pier belt\""));
        CHECK(holds(errors.what(), "did you mean 'Spare 900'?"));
        CHECK_FALSE(holds(errors.what(), "top cover"));
    }
}

TEST_CASE("a catalogue that is not there is one mistake and not the designation's too") {
    const ScratchFolder folder;
    const auto mistakes = [&] {
        try {
            parse_case(case_with("Spare 900"), (folder.path() / "case.toml").string());
        } catch (const InputErrors& errors) {
            return errors.errors();
        }
        return std::vector<InputError>();
    };
    REQUIRE(mistakes().size() == 1);
    CHECK(mistakes().front().key == "belt.catalogue");
    std::ofstream(folder.path() / "my-belts.toml") << " ";
    REQUIRE(mistakes().size() == 1);
    CHECK(holds(mistakes().front().allowed, "[[belt]]"));
}

TEST_CASE("a catalogue is read from beside its case and kept for a later restore") {
    const ScratchFolder folder;
    const std::string file = (folder.path() / "case.toml").string(), text = case_with("Spare 900");
    std::ofstream(folder.path() / "my-belts.toml") << catalogue;
    CHECK(parse_case(text, file).belt.section.membrane(0, 0) == doctest::Approx(7600));
    const std::optional<CatalogueFile> kept = named_catalogue(text, file);
    REQUIRE(kept.has_value());
    CHECK(kept->text == catalogue);
    CHECK(parse_case(text, "elsewhere/case.toml", kept->text).belt.section.membrane(0, 0) == doctest::Approx(7600));
    CHECK_FALSE(named_catalogue(sound_case, file).has_value());
}

TEST_CASE("swale belts shows the user's belts") {
    const ScratchFolder folder;
    const std::string file = (folder.path() / "my-belts.toml").string();
    std::ofstream(file) << catalogue;
    std::ostringstream list, sheet, err;
    CHECK(run_command_line({"belts", "--catalogue", file}, list, err) == 0);
    CHECK(holds(list.str(), "Own: Spare 900, Pier belt"));
    CHECK(run_command_line({"belts", "pier belt", "--catalogue", file}, sheet, err) == 0);
    CHECK(holds(sheet.str(), "data sheet of 2019"));
    CHECK(run_command_line({"belts", "--catalogue", (folder.path() / "absent.toml").string()}, list, err) == 2);
    CHECK(holds(err.str(), "absent.toml"));
    CHECK(holds(err.str(), "a catalogue of [[belt]] tables"));
    std::ostringstream near;
    CHECK(run_command_line({"belts", "Spare 901", "--catalogue", file}, list, near) == 2);
    CHECK(holds(near.str(), "did you mean 'Spare 900'?"));
}

}  // namespace swale
