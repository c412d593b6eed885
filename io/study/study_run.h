#pragma once

#include "io/study/journal.h"
#include "io/study/study_plan.h"

#include <functional>

namespace swale {

/// The part of a study that one process solves: cases number, number + of, number + 2 of, ...
struct Shard {
    int number = 1, of = 1;

    bool has(int planned_case) const { return (planned_case - number) % of == 0; }
};

/// For whoever watches: cases of the shard that are done, those of them done in this run, all of the shard.
struct StudyProgress {
    int done = 0, done_now = 0, all = 0;
    double seconds = 0;  ///< of this run
};

using StudyListener = std::function<void(const StudyProgress&)>;

/// Solves the cases of a shard that the journal does not have, `jobs` at a time, each by itself, so that neither order nor
/// shards change a result. Throws FileError if the journal can't be written; cases under way are finished first.
void run_study(const StudyPlan& plan, const Shard& shard, int jobs, Journal& journal, const StudyListener& listener);

}  // namespace swale
