#include "io/as_built_command.h"

#include "io/case_file.h"
#include "io/progress.h"
#include "io/quantity.h"
#include "io/result_files.h"
#include "io/result_folder.h"
#include "io/run_record.h"
#include "io/size_json.h"
#include "io/size_table.h"
#include "io/terminal/as_built_section.h"
#include "io/terminal/belt_warnings.h"
#include "io/terminal/cautions.h"
#include "io/terminal/plain_text.h"
#include "io/verdict.h"
#include "io/whole_file.h"

namespace swale {

int run_as_built(const SizeRequest& request, const std::string& text, const TransitionCase& given, const SizingBounds& bounds,
                 std::ostream& answer) {
    if (!request.find.empty())
        throw BadQuantity("--find: a case with a [survey] stands already: its single changes are compared; given \"" +
                          request.find + "\"; allowed: no --find, or a case without [survey]");
    if (bounds.aim != SizingAim::distance)
        throw BadQuantity("size.find: a case with a [survey] stands already: its single changes are compared; given \"" +
                          aim_words().at(static_cast<std::size_t>(bounds.aim)) +
                          "\"; allowed: no find, or a case without [survey]");
    const std::filesystem::path folder = request.out.value_or(request.case_file.stem().string() + "-as-built");
    prepare_result_folder(folder);
    const AsBuilt as_built = judge_as_built(given, bounds, terminal_progress());
    RunRecord record;
    record.case_file = request.case_file.string();
    record.case_text = text;
    record.transition = given;
    record.catalogue = named_catalogue(text, record.case_file);
    record.result = as_built.result;
    write_whole_file(folder / "as-built.json", as_built_json(as_built, given.title));
    write_result_files(folder, record);
    if (request.json)
        answer << as_built_json(as_built, given.title);
    else
        answer << wrapped(given.title) << wrapped(as_built_headline(as_built)) << belt_warnings(given.belt) << "\n"
               << as_built_tables(as_built) << "\n"
               << cautions << "\nResults of the transition as measured in " << folder.string() << "\n";
    return exit_code(as_built.result);
}

}  // namespace swale
