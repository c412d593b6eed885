#pragma once

#include "materials/belt.h"

#include <filesystem>
#include <optional>
#include <string>
#include <vector>

namespace swale {

/// A user's file of belts: [[belt]] tables, each with a `designation`, a `source`, and either a section outright in
/// [belt.section] or `like`, a designation of swale's own catalogue, with what the maker gives in the keys of a case's [belt].
struct CatalogueFile {
    std::string file;  ///< its name in messages
    std::string text;
};

/// What such a file is called in messages.
inline constexpr auto belt_catalogue = "a catalogue of [[belt]] tables in TOML";

/// Every belt of the file at that width [mm]; what it gives has the entry's source as its origin. Throws InputErrors with all
/// mistakes of the file.
std::vector<Belt> read_belt_catalogue(const CatalogueFile& catalogue, double width);

/// The belt of that designation, whatever its case and blanks; null if there is none.
const Belt* find_belt(const std::vector<Belt>& belts, const std::string& designation);

/// Designations of these belts, and the one that was probably meant; empty if none is near.
std::vector<std::string> designations_of(const std::vector<Belt>& belts);
std::string near_designation(const std::vector<Belt>& belts, const std::string& designation);

/// That neither catalogue has the designation, but one that is near.
std::string not_among(const std::string& designation, const std::string& near);

/// Where a case file finds the catalogue that it names: beside itself.
std::filesystem::path catalogue_path(const std::string& name, const std::string& case_file);

/// The catalogue that a sound case names in [belt], absent if none; throws as read_text_file does.
std::optional<CatalogueFile> named_catalogue(const std::string& case_text, const std::string& case_file);

}  // namespace swale
