#pragma once

#include <filesystem>

namespace swale {

/// `<stem of the case file>-result` in the current folder.
std::filesystem::path default_result_folder(const std::filesystem::path& case_file);

/// Throws BadQuantity where results, among them a changed `case.toml`, would be written over the case they are made from.
void refuse_own_case(const std::filesystem::path& folder, const std::filesystem::path& case_file);

/// Makes the folder where it is missing and tries a file in it, so that no solution is lost for want of a place. Throws
/// FileError.
void prepare_result_folder(const std::filesystem::path& folder);

}  // namespace swale
