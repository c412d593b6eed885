#pragma once

#include "io/chart/study_table.h"

#include <filesystem>
#include <string>
#include <vector>

namespace swale {

/// What became of a case; the first two were solved in every state.
enum class CaseOutcome { within, over, not_converged, bad_input, fault };

struct StudyCase {
    int number = 0;
    CaseOutcome outcome = CaseOutcome::within;
    std::string reason;  ///< why there is no solution; empty if there is one

    bool solved() const { return outcome <= CaseOutcome::over; }
};

/// A study as its database keeps it.
struct StudyRecord {
    StudyTable table;
    std::vector<StudyCase> cases;  ///< as many as table.cases, in their order
    int planned = 0;               ///< cases of the whole study, of which a shard holds a part
    std::string study_text, case_text, swale_version;
};

/// What a database is of and how many cases it has.
struct StudyHead {
    int rows = 0;
    std::string study_text, case_text;
};

/// Throws FileError.
StudyHead read_study_head(const std::filesystem::path& database);

/// Reads a database that `swale study` wrote, without its curves and fields. Throws FileError.
StudyRecord read_study_record(const std::filesystem::path& database);

/// Whether the file is a database of a study.
bool is_study_database(const std::filesystem::path& file);

}  // namespace swale
