#include "io/wear/roll_drawing.h"

#include "io/markup_text.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace swale {

namespace {

constexpr double width = 1000, middle = 500, half_span = 430;  // of a drawing; half a roll in it
constexpr double roll_height = 46, plot_height = 84, plot_step = 126;
constexpr double highest_exposure = 3;

// Places of a roll across the drawing.
class Across {
  public:
    explicit Across(double roll_length) : scale_(half_span / (roll_length / 2)) {}
    double operator()(double y) const { return middle - scale_ * y; }

  private:
    double scale_;
};

std::string opened(double height, const std::string& title) {
    return fmt::format(
        "<div class=\"wide\" tabindex=\"0\"><svg viewBox=\"0 0 {:.0f} {:.0f}\" role=\"img\" "
        "xmlns=\"http://www.w3.org/2000/svg\"><title>{}</title>\n",
        width, height, escaped(title));
}

std::string box(const char* kind, double left, double top, double wide, double high, double round = 0) {
    return fmt::format("<rect class=\"{}\" x=\"{:.1f}\" y=\"{:.1f}\" width=\"{:.1f}\" height=\"{:.1f}\" rx=\"{:.0f}\"/>\n",
                       kind, left, top, wide, high, round);
}

std::string line(const char* kind, double x1, double y1, double x2, double y2) {
    return fmt::format("<line class=\"{}\" x1=\"{:.1f}\" y1=\"{:.1f}\" x2=\"{:.1f}\" y2=\"{:.1f}\"/>\n", kind, x1, y1, x2, y2);
}

std::string label(double x, double y, const std::string& text, const char* anchor = "start") {
    return fmt::format("<text x=\"{:.1f}\" y=\"{:.1f}\" text-anchor=\"{}\">{}</text>\n", x, y, anchor, escaped(text));
}

std::string path(const char* kind, const std::vector<std::pair<double, double>>& points, bool closed = false) {
    std::string d;
    for (const auto& [x, y] : points) d += fmt::format("{}{:.1f} {:.1f}", d.empty() ? "M" : " L", x, y);
    return fmt::format("<path class=\"{}\" d=\"{}{}\"/>\n", kind, d, closed ? " Z" : "");
}

std::string roll_body(double top) {
    return box("shaft", middle - half_span - 40, top + 16, 80 + 2 * half_span, roll_height - 32) +
           box("roll", middle - half_span, top, 2 * half_span, roll_height, 8);
}

const char* kind_of(Mark mark) {
    return mark == Mark::contact ? "worn" : mark == Mark::none ? "unworn" : "unsure";
}

std::string observed(const SurveyedRoll& roll, const Across& across, double top) {
    std::string text = roll_body(top);
    for (const MarkedBand& band : roll.bands)
        text += box(kind_of(band.mark), across(band.to), top + 5, across(band.from) - across(band.to), roll_height - 10);
    double deepest = 0;
    for (const DepthReading& reading : roll.depths) deepest = std::max(deepest, reading.depth);
    for (const DepthReading& reading : roll.depths)
        if (deepest > 0)
            text += line("depth", across(reading.y), top, across(reading.y), top + roll_height * 0.9 * reading.depth / deepest);
    if (deepest > 0) text += label(middle + half_span + 6, top - 4, fmt::format("deepest {:.2f} mm", deepest), "end");
    return text;
}

// Depth of an even pressure that fits a prediction best, by roots as the likelihood has it; 0 without depths.
double depth_of_even(const SurveyedRoll& roll, const Prediction& prediction) {
    double pp = 0, pr = 0;
    for (const DepthReading& reading : roll.depths) {
        const auto after = std::lower_bound(prediction.y.begin(), prediction.y.end(), reading.y);
        const auto k = std::min<std::size_t>(after - prediction.y.begin(), prediction.y.size() - 1);
        pp += prediction.mean[k];
        pr += std::sqrt(prediction.mean[k] * reading.depth);
    }
    return pp > 0 ? std::pow(pr / pp, 2) : 0;
}

class Plot {
  public:
    Plot(const Across& across, double top) : across_(across), bottom_(top + plot_height) {}

    double height(double exposure) const {
        return bottom_ - plot_height * std::min(exposure, highest_exposure) / highest_exposure;
    }

    std::string axes() const {
        return line("axis", middle - half_span, bottom_, middle + half_span, bottom_) +
               line("faint", middle - half_span, height(1), middle + half_span, height(1)) +
               label(middle + half_span + 6, height(1) + 4, "even");
    }

    std::string predicted(const Prediction& prediction) const {
        std::vector<std::pair<double, double>> band, curve;
        for (std::size_t k = 0; k < prediction.y.size(); ++k) {
            band.emplace_back(across_(prediction.y[k]), height(prediction.mean[k] + prediction.spread[k]));
            curve.emplace_back(across_(prediction.y[k]), height(prediction.mean[k]));
        }
        for (std::size_t k = prediction.y.size(); k-- > 0;)
            band.emplace_back(across_(prediction.y[k]), height(std::max(0.0, prediction.mean[k] - prediction.spread[k])));
        return path("spread", band, true) + path("predicted", curve);
    }

    std::string read(const SurveyedRoll& roll, const Prediction& prediction) const {
        std::string text;
        const double even = depth_of_even(roll, prediction);
        for (const DepthReading& reading : roll.depths)
            if (even > 0)
                text += fmt::format("<circle class=\"observed\" cx=\"{:.1f}\" cy=\"{:.1f}\" r=\"4\"/>\n", across_(reading.y),
                                    height(reading.depth / even));
        for (const MarkedBand& band : roll.bands)
            text += box(kind_of(band.mark), across_(band.to), bottom_ + 2, across_(band.from) - across_(band.to), 7);
        return text;
    }

  private:
    const Across& across_;
    double bottom_;
};

std::string scale(const WearReport& report, const Across& across, double top) {
    std::string text;
    const double junction = report.file.survey.run.junction, edge = report.file.survey.run.width / 2;
    const std::vector<std::pair<double, const char*>> places{
        {edge, "left edge"}, {junction, "left junction"}, {0, "middle"}, {-junction, "right junction"}, {-edge, "right edge"}};
    for (const auto& [y, name] : places) text += label(across(y), top, fmt::format("{} {:+.0f}", name, y), "middle");
    return text;
}

std::string faint_places(const WearReport& report, const Across& across, double from, double to) {
    std::string text;
    const double junction = report.file.survey.run.junction, edge = report.file.survey.run.width / 2;
    for (const double y : {edge, junction, 0.0, -junction, -edge}) text += line("faint", across(y), from, across(y), to);
    return text;
}

}  // namespace

std::string roll_drawing(const WearReport& report, int index, const std::vector<Explanation>& shown) {
    const SurveyedRoll& roll = report.file.survey.rolls[index];
    const RollJudgement& judgement = report.diagnosis.rolls[index];
    const Across across(report.file.survey.roll_length);
    const double first_plot = 40 + roll_height + 34, end = first_plot + plot_step * static_cast<double>(shown.size());
    std::string text = opened(end + 16, "roll " + roll.name + ", observed and predicted contact");
    text += faint_places(report, across, 24, end - 24) + label(10, 16, "observed on \"" + roll.name + "\"") +
            observed(roll, across, 32);
    double top = first_plot;
    for (const Explanation explanation : shown) {
        const Prediction& prediction = judgement.predictions[static_cast<int>(explanation)];
        const Plot plot(across, top);
        text += label(10, top - 6,
                      fmt::format("predicted: {}, likelihood {:.3f} ({:.2f} from this roll alone)", name_of(explanation),
                                  report.diagnosis.likelihoods[explanation], judgement.alone[explanation]));
        text += plot.axes() + plot.predicted(prediction) + plot.read(roll, prediction);
        top += plot_step;
    }
    return text + scale(report, across, end - 6) + "</svg></div>\n";
}

std::string pressure_drawing(const WearReport& report, const ExamplePressure& example) {
    const ReturnRun& run = report.file.survey.run;
    const Across across(report.file.survey.roll_length);
    constexpr double roll_top = 96, plot_top = roll_top + roll_height + 22;
    const double even = example.contact.force / run.width, lift = std::min(3.0, 66 / std::max(1.0, example.contact.widest_gap));
    const double off = example.offset;
    std::vector<std::pair<double, double>> belt, force{{across(off - run.width / 2), plot_top}};
    double sum = 0, wide = 0, where = 0;  // places are gathered over 16 mm
    for (const RollPressure& place : example.contact.pressure) {
        belt.emplace_back(across(off + place.y), roll_top - 4 - lift * std::max(0.0, place.gap));
        sum += place.force * place.width;
        wide += place.width;
        where += place.y * place.width;
        if (wide < 16 && &place != &example.contact.pressure.back()) continue;
        force.emplace_back(across(off + where / wide), plot_top + plot_height * std::min(sum / wide / even, 4.0) / 4);
        sum = wide = where = 0;
    }
    force.emplace_back(across(off + run.width / 2), plot_top);
    std::string text = opened(plot_top + plot_height + 26, example.name);
    text += faint_places(report, across, 20, plot_top + plot_height) + roll_body(roll_top) + path("belt", belt);
    text += label(10, 16,
                  fmt::format("{}: widest gap {:.1f} mm, drawn {:.2g} times as high", example.name, example.contact.widest_gap,
                              lift * report.file.survey.roll_length / 2 / half_span));
    text += path("likely", force, true) + line("axis", middle - half_span, plot_top, middle + half_span, plot_top);
    text += line("faint", middle - half_span, plot_top + plot_height / 4, middle + half_span, plot_top + plot_height / 4) +
            label(middle + half_span + 6, plot_top + plot_height / 4 + 4, "even");
    return text + scale(report, across, plot_top + plot_height + 18) + "</svg></div>\n";
}

}  // namespace swale
