#pragma once

#include "io/study/study_file.h"

#include <string>
#include <vector>

namespace swale {

/// One case of a study, numbered from 1.
struct PlannedCase {
    int number = 0;
    std::vector<std::string> labels;  ///< one an axis
    std::string text;                 ///< of the case file
    std::string contradiction = {};   ///< of its settings, in a sentence; there is no text then
};

/// The cases of a study in their order. Of a grid the last axis changes fastest. A Latin hypercube draws every axis once from
/// each of `sample` equal shares of it, in an order that seed and axis alone decide (McKay, Beckman and Conover, Technometrics
/// 21 (1979) 239).
class StudyPlan {
  public:
    explicit StudyPlan(Study study);

    const Study& study() const { return study_; }
    int size() const { return size_; }
    /// Throws std::out_of_range outside 1 to size().
    PlannedCase at(int number) const;

    /// All cases in groups that are solved together: those that differ in the pull of their one state alone, eight at most.
    /// The plan decides, no shard; groups in the order of their first cases.
    std::vector<std::vector<int>> chains() const;

  private:
    int cases_a_step(std::size_t axis) const;
    Choice choice(std::size_t axis, int number) const;
    bool varies_tension_alone(const Axis& axis) const;
    int first_alike(int number) const;

    Study study_;
    int size_ = 1;
    std::vector<std::vector<double>> shares_;  // of each axis of a Latin hypercube, case by case
};

}  // namespace swale
