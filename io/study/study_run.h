#pragma once

#include "io/study/journal.h"
#include "io/study/study_plan.h"

#include <functional>

namespace swale {

/// The part of a study that one process solves: chains number, number + of, number + 2 of, ... of its plan.
struct Shard {
    int number = 1, of = 1;

    bool has(int chain) const { return (chain - number) % of == 0; }
};

/// For whoever watches: cases of the shard that are done, those of them done in this run, all of the shard.
struct StudyProgress {
    int done = 0, done_now = 0, all = 0;
    double seconds = 0;  ///< of this run
};

using StudyListener = std::function<void(const StudyProgress&)>;

/// Solves the cases of a shard that the journal does not have, `jobs` chains at a time. A chain is solved from its beginning
/// even where the journal has some of it, so that neither order nor shards nor kills change a result. Throws FileError if the
/// journal can't be written; cases under way are finished first.
void run_study(const StudyPlan& plan, const Shard& shard, int jobs, Journal& journal, const StudyListener& listener);

}  // namespace swale
