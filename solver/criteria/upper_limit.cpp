#include "solver/criteria/upper_limit.h"

namespace swale {

std::optional<double> whole_error(const Reading& reading) {
    if (!reading.error && !reading.far_end_error) return {};
    return reading.error.value_or(0) + reading.far_end_error.value_or(0);
}

Judgement against_upper_limit(const char* name, const StateResult& state, const Reading& reading, const char* unit,
                              const std::optional<Limit>& limit) {
    Judgement judgement{name, state.name, reading.value, {}, unit, {}, {}, false, "", reading.x, reading.y};
    judgement.error = whole_error(reading);
    if (!limit) return judgement;
    judgement.limit = limit->value;
    judgement.source = limit->source;
    judgement.advisory = limit->advisory;
    if (limit->value > 0) judgement.utilisation = reading.value / limit->value;
    if (!limit->advisory) judgement.passed = reading.value <= limit->value;
    return judgement;
}

}  // namespace swale
