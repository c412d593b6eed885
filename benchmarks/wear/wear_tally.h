#pragma once

#include "benchmarks/wear/random_survey.h"

#include <map>
#include <string>
#include <utility>
#include <vector>

namespace swale::benchmark {

/// What was said of surveys whose truth is known.
class WearTally {
  public:
    void add(const RandomSurvey& made, const WearDiagnosis& diagnosis, double seconds);
    /// Confusion matrix, wrong verdicts, calibration, coverage of the fitted values, times: as Markdown.
    std::string text() const;

  private:
    struct Bin {
        int count = 0, right = 0;
        double stated = 0;
    };
    std::string confusion() const;
    std::string calibration() const;
    std::string levels() const;

    std::map<std::string, std::map<std::string, int>> said_;  ///< by truth and verdict
    std::vector<Bin> bins_ = std::vector<Bin>(10);
    std::vector<std::pair<double, bool>> best_;  ///< likelihood of the likeliest belt, whether it was the true one
    int surveys_ = 0, verdicts_ = 0, wrong_ = 0;
    int angles_ = 0, angles_within_ = 0, rises_ = 0, rises_within_ = 0;
    std::vector<double> seconds_;
    std::vector<std::string> wrong_ones_;
};

}  // namespace swale::benchmark
