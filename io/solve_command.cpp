#include "io/solve_command.h"

#include "io/case_file.h"
#include "io/progress.h"
#include "io/result_files.h"
#include "io/result_folder.h"
#include "io/run_record.h"
#include "io/summary_json.h"
#include "io/terminal_answer.h"
#include "io/text_file.h"
#include "io/verdict.h"
#include "solver/transition.h"

namespace swale {

int run_solve(const SolveRequest& request, std::ostream& answer) {
    RunRecord record;
    record.case_file = request.case_file.string();
    record.case_text = read_text_file(request.case_file);
    record.transition = parse_case(record.case_text, record.case_file);
    record.catalogue = named_catalogue(record.case_text, record.case_file);

    const std::filesystem::path folder = request.out.value_or(default_result_folder(request.case_file));
    prepare_result_folder(folder);
    record.result = solve_transition(record.transition, terminal_progress());
    write_result_files(folder, record);

    if (request.json)
        answer << summary_json(record);
    else
        answer << terminal_answer(record) << "\nResults in " << folder.string() << "\n";
    return exit_code(record.result);
}

}  // namespace swale
