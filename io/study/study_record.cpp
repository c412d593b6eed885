#include "io/study/study_record.h"

#include "io/file_error.h"
#include "io/hdf5/reader.h"

#include <cmath>

namespace swale {

namespace {

CaseOutcome outcome_of(const std::string& status, const std::string& verdict) {
    if (status == "bad input") return CaseOutcome::bad_input;
    if (status != "solved") return CaseOutcome::fault;
    if (verdict == "not converged") return CaseOutcome::not_converged;
    return verdict == "within limits" ? CaseOutcome::within : CaseOutcome::over;
}

void read_cases(const Hdf5Source& cases, StudyRecord& record) {
    const std::vector<double> numbers = cases.numbers("case");
    const std::vector<std::string> status = cases.texts("status"), verdicts = cases.texts("verdict"),
                                   reasons = cases.texts("reason");
    for (std::size_t k = 0; k < numbers.size(); ++k) {
        StudyCase one{static_cast<int>(std::lround(numbers[k])), outcome_of(status.at(k), verdicts.at(k)), ""};
        if (one.outcome == CaseOutcome::not_converged)
            one.reason = record.table.cases.at(k).row.why_none;
        else if (!one.solved())
            one.reason = reasons.at(k);
        record.cases.push_back(std::move(one));
    }
}

}  // namespace

StudyHead read_study_head(const std::filesystem::path& database) {
    const Hdf5Silence silence;
    const Hdf5Source root(database);
    return {root.integer_attribute("rows"), root.text("study_text"), root.text("case_text")};
}

StudyRecord read_study_record(const std::filesystem::path& database) {
    StudyRecord record{read_study_table(database), {}, 0, "", "", ""};
    const Hdf5Silence silence;
    const Hdf5Source root(database);
    read_cases(root.group("cases"), record);
    record.planned = root.integer_attribute("cases");
    record.study_text = root.text("study_text");
    record.case_text = root.text("case_text");
    record.swale_version = root.text_attribute("swale_version");
    return record;
}

bool is_study_database(const std::filesystem::path& file) {
    if (!std::filesystem::is_regular_file(file)) return false;
    try {
        const Hdf5Silence silence;
        const Hdf5Source root(file);
        return root.has_attribute("format") && root.text_attribute("format") == "swale study";
    } catch (const FileError&) {
        return false;
    }
}

}  // namespace swale
