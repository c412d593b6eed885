#pragma once

#include "io/report/study/study_figures.h"

#include <string>

namespace swale {

/// What was varied and asked, in a sentence.
std::string study_question(const StudyRecord& record);

/// The first screen: how many cases pass, what the hand methods make of them, verdicts by what was varied, the first picture.
std::string study_answer(const StudyRecord& record, const StudyFigures& figures);

}  // namespace swale
