#include "benchmarks/wear/wear_tally.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace swale::benchmark {

namespace {

constexpr double degree = 3.14159265358979323846 / 180;

// As a verdict names it: creased with or without cupping is junction failure.
const char* family(Explanation explanation) {
    switch (explanation) {
        case Explanation::flat:
            return "flat";
        case Explanation::cupped:
            return "cupped";
        case Explanation::creased:
        case Explanation::both:
            return "junction failure";
        case Explanation::mistracked:
            return "mistracked";
        case Explanation::other:
            break;
    }
    return "none of these";
}

const char* truth_row(Explanation explanation) {
    if (explanation == Explanation::creased) return "creased";
    return explanation == Explanation::both ? "creased and cupped" : family(explanation);
}

std::string verdict_of(const WearDiagnosis& diagnosis) {
    if (!diagnosis.verdict) return "can't tell";
    return diagnosis.junction_failure ? "junction failure" : family(*diagnosis.verdict);
}

double stated_for(const WearDiagnosis& diagnosis, const std::string& name) {
    double sum = 0;
    for (int e = 0; e < explanations; ++e)
        if (name == family(static_cast<Explanation>(e))) sum += diagnosis.likelihoods.of[e];
    return sum;
}

const std::vector<std::string>& families() {
    static const std::vector<std::string> all{"flat", "cupped", "junction failure", "mistracked"};
    return all;
}

bool within(const Fitted& fitted, double value) {
    return value >= fitted.low && value <= fitted.high;
}

}  // namespace

void WearTally::add(const RandomSurvey& made, const WearDiagnosis& diagnosis, double seconds) {
    const WearTruth& truth = made.truth;
    const std::string verdict = verdict_of(diagnosis), right = family(truth.explanation);
    ++surveys_;
    ++said_[truth_row(truth.explanation)][verdict];
    seconds_.push_back(seconds);
    std::pair<double, bool> best{0, false};
    for (const std::string& name : families()) {
        const double stated = stated_for(diagnosis, name);
        best = std::max(best, std::pair(stated, name == right));
        Bin& bin = bins_[std::min(9, static_cast<int>(10 * stated))];
        ++bin.count;
        bin.stated += stated;
        if (name == right) ++bin.right;
    }
    best_.push_back(best);
    if (verdict == "can't tell") return;
    ++verdicts_;
    const double rise = truth.memory.cupping * made.survey.run.width * made.survey.run.width / 8;
    const double angle = -std::min(truth.memory.left_crease, truth.memory.right_crease);
    if (verdict != right) {
        ++wrong_;
        wrong_ones_.push_back(fmt::format("{:.0f} mm wide, {}, rise {:.0f} mm, crease {:.1f} deg, {} rolls: said {} ({})",
                                          made.survey.run.width, right, rise, angle / degree, made.survey.rolls.size(), verdict,
                                          diagnosis.grounds));
        return;
    }
    if (truth.explanation == Explanation::cupped) ++rises_, rises_within_ += within(diagnosis.cupping_rise, rise);
    if (truth.explanation == Explanation::creased) ++angles_, angles_within_ += within(diagnosis.crease_angle, angle);
}

std::string WearTally::confusion() const {
    std::vector<std::string> columns = families();
    columns.push_back("can't tell");
    std::string text = "| truth |";
    for (const std::string& column : columns) text += " " + column + " |";
    text += "\n|---|---|---|---|---|---|\n";
    for (const auto& [truth, row] : said_) {
        text += "| " + truth + " |";
        for (const std::string& column : columns) text += fmt::format(" {} |", row.contains(column) ? row.at(column) : 0);
        text += "\n";
    }
    return text;
}

std::string WearTally::calibration() const {
    std::string text = "| stated likelihood | times stated | mean stated | came true |\n|---|---|---|---|\n";
    for (std::size_t k = 0; k < bins_.size(); ++k)
        if (bins_[k].count > 0)
            text += fmt::format("| {:.1f} to {:.1f} | {} | {:.3f} | {:.3f} |\n", 0.1 * static_cast<double>(k),
                                0.1 * static_cast<double>(k + 1), bins_[k].count, bins_[k].stated / bins_[k].count,
                                static_cast<double>(bins_[k].right) / bins_[k].count);
    return text;
}

// What verdicts would come of another level, all else alike.
std::string WearTally::levels() const {
    std::string text = "| a verdict needs | verdicts | wrong |\n|---|---|---|\n";
    for (const double level : {0.7, 0.8, 0.9, 0.95, 0.98}) {
        int verdicts = 0, wrong = 0;
        for (const auto& [stated, right] : best_)
            if (stated >= level) ++verdicts, wrong += right ? 0 : 1;
        text += fmt::format("| {:.2f} | {} | {} |\n", level, verdicts, wrong);
    }
    return text;
}

std::string WearTally::text() const {
    std::vector<double> sorted = seconds_;
    std::sort(sorted.begin(), sorted.end());
    std::string text =
        fmt::format("{} surveys, {} verdicts; {} wrong, {:.2f} % of the surveys, {:.2f} % of the verdicts\n\n", surveys_,
                    verdicts_, wrong_, 100.0 * wrong_ / surveys_, 100.0 * wrong_ / std::max(1, verdicts_));
    text += confusion() + "\n" + calibration() + "\n" + levels() + "\n";
    text += fmt::format("truth within the 5 % to 95 % range: rise {} of {}, crease angle {} of {}\n", rises_within_, rises_,
                        angles_within_, angles_);
    text +=
        fmt::format("judging, shapes at hand: median {:.2f} s, longest {:.2f} s\n", sorted[sorted.size() / 2], sorted.back());
    for (const std::string& wrong : wrong_ones_) text += "- " + wrong + "\n";
    return text;
}

}  // namespace swale::benchmark
