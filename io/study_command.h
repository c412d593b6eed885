#pragma once

#include <filesystem>
#include <ostream>
#include <string>
#include <vector>

namespace swale {

struct StudyRequest {
    std::filesystem::path study_file;
    std::filesystem::path out;  ///< the database; its journal stands beside it, OUT.journal
    int jobs = 2;               ///< cases solved at a time
    std::string shard;          ///< "2/8": the second of eight parts; empty: all
};

/// `swale study`: solves every case of a study that the journal does not have yet, then writes the database. A study that was
/// killed goes on where it was. Returns 0 once every case of the shard has its row, solved
/// or explained; 2 if none of them could be read. Throws InputErrors,
/// BadQuantity and FileError; what was solved stays in the journal.
int run_study_command(const StudyRequest& request, std::ostream& answer);

struct MergeRequest {
    std::filesystem::path study_file;
    std::filesystem::path out;
    std::vector<std::filesystem::path> shards;  ///< databases whose journals stand beside them
};

/// `swale merge`: one database of all shards. Throws InputErrors if a case is in none of them; FileError.
int run_merge(const MergeRequest& request, std::ostream& answer);

}  // namespace swale
