#pragma once

#include "io/study/study_plan.h"
#include "tests/io/scratch_folder.h"

#include <filesystem>
#include <map>
#include <string>
#include <vector>

namespace swale {

/// A study of tension, lift and distance (24 cases) whose results are made up: what its belt needs is a plain formula.
extern const std::string made_up_study_text;

/// What the made-up belt needs: longer under more tension, shorter behind a raised pulley [mm].
double made_up_distance(const std::vector<std::string>& labels);

/// Lines of a journal: a case solved, one of which a state did not converge, one that can't be read.
std::string solved_record(const PlannedCase& planned, const std::string& state = "running");
std::string open_record(const PlannedCase& planned, const std::string& reason);
std::string unread_record(const PlannedCase& planned, const std::string& reason);

/// A folder with the database of such a study; every case is solved unless `records` holds it.
struct MadeUpStudy {
    ScratchFolder folder;
    std::filesystem::path database = folder.path() / "made-up.h5", charts = folder.path() / "charts";

    MadeUpStudy() : MadeUpStudy(made_up_study_text, {}) {}
    MadeUpStudy(const std::string& text, std::map<int, std::string> records);

    StudyPlan plan() const;
};

}  // namespace swale
