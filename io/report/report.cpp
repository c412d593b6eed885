#include "io/report/report.h"

#include "io/report/answer_section.h"
#include "io/report/belt_view.h"
#include "io/report/detail_sections.h"
#include "io/report/figures_section.h"
#include "io/report/html.h"
#include "io/report/page.h"
#include "io/report/question.h"

#include <functional>
#include <future>

namespace swale {

namespace {

std::string data_of(const RunRecord& record) {
    nlohmann::ordered_json data = belt_view(record);
    data["leading"] = leading_state(record.result);
    data["charts"] = charts_data(record);
    return data.dump(-1, ' ', false, nlohmann::ordered_json::error_handler_t::replace);
}

}  // namespace

std::string report_html(const RunRecord& record, const std::vector<ReportSection>& more) {
    auto data = std::async(std::launch::async, data_of, std::cref(record));  // a third of the work
    std::string body = answer_section(record);
    for (const ReportSection& entry : more) body += section(entry.id, entry.heading, entry.body);
    body += figures_section(record) + readings_section(record) + hand_methods_report(record) + belt_section(record) +
            method_section(record) + judgement_section(record) + closing_sections(record);
    return page_html({record.transition.title, question(record.transition), body, data.get()});
}

}  // namespace swale
