// What follows from a verdict: for the belt, for tracking, for the transition.
#include "io/terminal/plain_text.h"
#include "io/wear/wear_report.h"

#include <fmt/format.h>

#include <cmath>

namespace swale {

namespace {

// Share of a roll's force that a belt puts on parts of its width, by the prediction for the first roll.
struct ForceShares {
    double edges = 0, wings = 0, centre = 0;  ///< outer tenth of each half; the rest of the wings; between the junctions
};

ForceShares force_shares(const WearReport& report, Explanation explanation) {
    const RollJudgement& roll = report.diagnosis.rolls.front();
    const Prediction& prediction = roll.predictions[static_cast<int>(explanation)];
    const double half = report.file.survey.run.width / 2, junction = report.file.survey.run.junction;
    ForceShares shares;
    double sum = 0;
    for (std::size_t k = 0; k < prediction.y.size(); ++k) {
        const double y = std::abs(prediction.y[k] - roll.offset.mean);
        (y > 0.9 * half ? shares.edges : y > junction ? shares.wings : shares.centre) += prediction.mean[k];
        sum += prediction.mean[k];
    }
    return {shares.edges / sum, shares.wings / sum, shares.centre / sum};
}

std::string tracking(const WearReport& report, Explanation explanation) {
    const ForceShares shares = force_shares(report, explanation);
    return fmt::format(
        "tracking: a return roll steers by friction, so only where it is pressed; of its force {:.0f} % lie on the outer tenth "
        "of "
        "each half of the belt, {:.0f} % on the rest of the wings, {:.0f} % between the junctions (contact model)",
        100 * shares.edges, 100 * shares.wings, 100 * shares.centre);
}

void add_transition(const WearReport& report, std::vector<std::string>& lines) {
    if (report.transition)
        for (const std::string& sentence : sentences(*report.transition)) lines.push_back(sentence);
    else
        lines.push_back("name the transition's case in the survey, [transition] case = \"...\", and it is solved and sized");
}

void add_junction_failure(const WearReport& report, std::vector<std::string>& lines) {
    lines.push_back(
        "contact at edges and centre with gaps at the junctions is the mark of junction failure (common practice, no source)");
    lines.push_back(
        "a crease comes of a transition that is too short, rolls too far apart at the junction, or too much tension on too "
        "large a gap (common practice, no source)");
    add_transition(report, lines);
    lines.push_back(tracking(report, Explanation::creased));
    lines.push_back("a belt with creases doesn't lie flat again: have the belt maker judge carcass and splice at the crease");
}

void add_cupping(const WearReport& report, std::vector<std::string>& lines) {
    lines.push_back(
        "contact at the edges alone (a limp belt lies down in the middle again), or turned over in the centre, is the mark of "
        "cupping (common practice, no source)");
    for (const char* cause :
         {"a cover that swells from oil or grease in what is carried, or in cleaning, and bends the belt towards the other "
          "side",
          "heat or age that shrinks and hardens one cover", "covers of very unequal thickness, cured or cooled unevenly",
          "too little stiffness across for trough angle and width, or a belt long at rest in its trough"})
        lines.push_back(std::string("usual cause (from memory, no source): ") + cause);
    lines.push_back(tracking(report, Explanation::cupped));
    if (report.diagnosis.perhaps_creased) {
        lines.push_back(fmt::format("it may be creased too ({:.2f}): until that is decided its transition is judged as well",
                                    report.diagnosis.likelihoods.any_crease()));
        add_transition(report, lines);
    } else if (report.file.transition && !report.transition) {
        lines.push_back("the transition is not solved: cupping is none of its doing");
    }
}

void add_mistracking(const WearReport& report, std::vector<std::string>& lines) {
    for (const char* cause : {"rolls or pulleys out of square or level", "a splice out of square", "load off the middle",
                              "build-up on rolls or pulleys"})
        lines.push_back(std::string("usual cause (from memory, no source): ") + cause);
    lines.push_back(tracking(report, Explanation::mistracked));
}

}  // namespace

std::vector<std::string> what_follows(const WearReport& report) {
    std::vector<std::string> lines;
    const WearDiagnosis& diagnosis = report.diagnosis;
    if (diagnosis.junction_failure) add_junction_failure(report, lines);
    if (diagnosis.cupping)
        add_cupping(report, lines);
    else if (diagnosis.verdict == Explanation::mistracked)
        add_mistracking(report, lines);
    else if (diagnosis.verdict == Explanation::flat)
        lines.push_back("this wear is that of a flat belt in the middle: neither cupping nor a crease is needed to explain it");
    else if (!diagnosis.verdict)
        lines.push_back("nothing follows before more is read");
    if (diagnosis.junction_failure || diagnosis.cupping)
        lines.push_back(
            "uneven wear across the roll and difficult tracking go with both cupping and junction failure (common practice, no "
            "source)");
    return lines;
}

}  // namespace swale
