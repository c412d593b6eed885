#include "tests/io/held_run.h"

#include "io/case_file.h"
#include "solver/transition.h"
#include "tests/io/scratch_folder.h"

namespace swale {

RunRecord held_run(int grid) {
    RunRecord record;
    record.case_file = SWALE_SOURCE_DIR "/tests/io/data/held.example.toml";
    record.case_text = file_text(record.case_file) + "\n[solve]\ngrid = " + std::to_string(grid) + "\n";
    record.transition = parse_case(record.case_text, record.case_file);
    record.result = solve_transition(record.transition);
    return record;
}

}  // namespace swale
