#include "benchmarks/wear/wear_tally.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace swale::benchmark {

namespace {

constexpr double degree = 3.14159265358979323846 / 180;

const char* truth_row(Explanation explanation) {
    constexpr const char* names[explanations] = {"flat", "cupped", "creased", "creased and cupped", "mistracked", "other"};
    return names[static_cast<int>(explanation)];
}

// What a verdict may say of a belt, and of which belts it is true.
struct Statement {
    const char* text;
    std::vector<Explanation> true_of;

    bool is_true(Explanation truth) const { return std::find(true_of.begin(), true_of.end(), truth) != true_of.end(); }
    double stated(const Likelihoods& likelihoods) const {
        double sum = 0;
        for (const Explanation explanation : true_of) sum += likelihoods[explanation];
        return sum;
    }
};

const std::vector<Statement>& statements() {
    static const std::vector<Statement> all{{"flat", {Explanation::flat}},
                                            {"cupped alone", {Explanation::cupped}},
                                            {"cupped, perhaps creased", {Explanation::cupped, Explanation::both}},
                                            {"junction failure", {Explanation::creased, Explanation::both}},
                                            {"mistracked", {Explanation::mistracked}}};
    return all;
}

// Absent: can't tell.
const Statement* verdict_of(const WearDiagnosis& diagnosis) {
    if (!diagnosis.verdict) return nullptr;
    if (diagnosis.junction_failure) return &statements()[3];
    if (diagnosis.perhaps_creased) return &statements()[2];
    const auto says = [&](const Statement& statement) { return statement.true_of.front() == *diagnosis.verdict; };
    return &*std::find_if(statements().begin(), statements().end(), says);
}

constexpr const char* no_verdict = "can't tell";

bool within(const Fitted& fitted, double value) {
    return value >= fitted.low && value <= fitted.high;
}

}  // namespace

void WearTally::add(const RandomSurvey& made, const WearDiagnosis& diagnosis, double seconds) {
    const WearTruth& truth = made.truth;
    const Statement* const verdict = verdict_of(diagnosis);
    ++surveys_;
    ++said_[truth_row(truth.explanation)][verdict ? verdict->text : no_verdict];
    seconds_.push_back(seconds);
    std::pair<double, bool> best{0, false};
    for (const Statement& statement : statements()) {
        const double stated = statement.stated(diagnosis.likelihoods);
        const bool right = statement.is_true(truth.explanation);
        best = std::max(best, std::pair(stated, right));
        Bin& bin = bins_[std::min(9, static_cast<int>(10 * stated))];
        ++bin.count;
        bin.stated += stated;
        if (right) ++bin.right;
    }
    best_.push_back(best);
    if (!verdict) return;
    ++verdicts_;
    const double rise = truth.memory.cupping * made.survey.run.width * made.survey.run.width / 8;
    const double angle = -std::min(truth.memory.left_crease, truth.memory.right_crease);
    if (!verdict->is_true(truth.explanation)) {
        ++wrong_;
        wrong_ones_.push_back(fmt::format("{:.0f} mm wide, {}, rise {:.0f} mm, crease {:.1f} deg, {} rolls: said {} ({})",
                                          made.survey.run.width, truth_row(truth.explanation), rise, angle / degree,
                                          made.survey.rolls.size(), verdict->text, diagnosis.grounds));
        return;
    }
    if (truth.explanation == Explanation::cupped) ++rises_, rises_within_ += within(diagnosis.cupping_rise, rise);
    if (truth.explanation == Explanation::creased) ++angles_, angles_within_ += within(diagnosis.crease_angle, angle);
}

std::string WearTally::confusion() const {
    std::vector<std::string> columns;
    for (const Statement& statement : statements()) columns.push_back(statement.text);
    columns.push_back(no_verdict);
    std::string text = "| truth |";
    for (const std::string& column : columns) text += " " + column + " |";
    text += "\n|---|---|---|---|---|---|---|\n";
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
