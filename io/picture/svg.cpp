#include "io/picture/svg.h"

#include "io/markup_text.h"
#include "io/picture/base64.h"
#include "io/picture/cairo_files.h"
#include "io/terminal/plain_text.h"

#include <fmt/format.h>

#include <algorithm>

namespace swale {

namespace {

std::string number(double value) {
    std::string text = fmt::format("{:.1f}", value + 0.0);
    while (text.back() == '0') text.pop_back();
    if (text.back() == '.') text.pop_back();
    return text == "-0" ? "0" : text;
}

std::string hex(Colour colour) {
    return fmt::format("#{:02x}{:02x}{:02x}", colour.red, colour.green, colour.blue);
}

/// Distance of a point from the straight piece between two others.
double off_line(const Eigen::Vector2d& point, const Eigen::Vector2d& from, const Eigen::Vector2d& to) {
    const Eigen::Vector2d way = to - from;
    const double share = way.squaredNorm() > 0 ? std::clamp((point - from).dot(way) / way.squaredNorm(), 0.0, 1.0) : 0.0;
    return (point - from - share * way).norm();
}

/// Without points that lie on the line all the same: as far as can be seen.
std::vector<Eigen::Vector2d> needed(const std::vector<Eigen::Vector2d>& points) {
    constexpr double seen = 0.12;
    std::vector<Eigen::Vector2d> kept;
    size_t last = 0;
    for (size_t i = 0; i < points.size(); ++i) {
        bool straight = i + 1 < points.size() && !kept.empty();
        for (size_t k = last + 1; straight && k <= i; ++k) straight = off_line(points[k], points[last], points[i + 1]) < seen;
        if (straight) continue;
        kept.push_back(points[i]);
        last = i;
    }
    return kept;
}

std::string path_data(const std::vector<Eigen::Vector2d>& points, bool closed) {
    std::string data;
    for (const Eigen::Vector2d& point : needed(points))
        data += (data.empty() ? "M" : "L") + number(point.x()) + " " + number(point.y());
    return closed ? data + "Z" : data;
}

std::string pen_attributes(const Pen& pen) {
    std::string text = fmt::format(" stroke=\"{}\" stroke-width=\"{}\"", hex(pen.colour), number(pen.width));
    if (pen.dashes.empty()) return text;
    text += " stroke-dasharray=\"";
    for (const double dash : pen.dashes) text += number(dash) + " ";
    text.back() = '"';
    return text;
}

/// A nested viewport cuts off without an id.
std::string cut_off(const std::string& element, const std::vector<Eigen::Vector2d>& points, const std::optional<Box>& inside) {
    const auto within = [&](const Eigen::Vector2d& point) {
        return point.x() >= inside->left && point.x() <= inside->right && point.y() >= inside->top &&
               point.y() <= inside->bottom;
    };
    if (!inside || std::ranges::all_of(points, within)) return element + "\n";
    const std::string box = fmt::format("{} {} {} {}", number(inside->left), number(inside->top), number(inside->width()),
                                        number(inside->height()));
    return fmt::format("<svg x=\"{}\" y=\"{}\" width=\"{}\" height=\"{}\" viewBox=\"{}\">{}</svg>\n", number(inside->left),
                       number(inside->top), number(inside->width()), number(inside->height()), box, element);
}

std::string element(const Stroke& stroke) {
    return cut_off(fmt::format("<path d=\"{}\" fill=\"none\"{}/>", path_data(stroke.points, false), pen_attributes(stroke.pen)),
                   stroke.points, stroke.inside);
}

std::string element(const Area& area) {
    std::string text = fmt::format("<path d=\"{}\" fill=\"{}\"", path_data(area.points, true), hex(area.fill));
    if (area.opacity < 1) text += fmt::format(" fill-opacity=\"{}\"", number(area.opacity));
    if (area.outline) text += pen_attributes(*area.outline);
    return cut_off(text + "/>", area.points, area.inside);
}

std::string element(const Words& words) {
    static constexpr const char* anchors[] = {"", " text-anchor=\"middle\"", " text-anchor=\"end\""};
    std::string text =
        fmt::format("<text x=\"{}\" y=\"{}\" font-size=\"{}\" fill=\"{}\"{}", number(words.at.x()), number(words.at.y()),
                    number(words.size), hex(words.colour), anchors[static_cast<int>(words.anchor)]);
    if (words.bold) text += " font-weight=\"600\"";
    if (words.halo) text += " stroke=\"#ffffff\" stroke-width=\"3\" paint-order=\"stroke\"";
    return text + ">" + escaped(words.text) + "</text>\n";
}

std::string element(const Patchwork& patch) {
    return fmt::format(
        "<image x=\"{}\" y=\"{}\" width=\"{}\" height=\"{}\" preserveAspectRatio=\"none\" "
        "href=\"data:image/png;base64,{}\"/>\n",
        number(patch.box.left), number(patch.box.top), number(patch.box.width()), number(patch.box.height()),
        base64(png(patch.raster)));
}

}  // namespace

std::string svg(const Drawing& drawing, const std::string& name) {
    std::string text = fmt::format(
        "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 {0} {1}\" width=\"{0}\" height=\"{1}\" role=\"img\" "
        "stroke-linejoin=\"round\" "
        "font-family=\"Noto Sans, Helvetica Neue, Arial, DejaVu Sans, sans-serif\"{2}>\n",
        number(drawing.width), number(drawing.height), name.empty() ? "" : " data-drawing=\"" + escaped(name) + "\"");
    text += "<title>" + escaped(drawing.title) + "</title>\n";
    if (!drawing.description.empty()) text += "<desc>" + escaped(drawing.description) + "</desc>\n";
    for (const Mark& mark : drawing.marks) text += std::visit([](const auto& shape) { return element(shape); }, mark);
    return text + "</svg>\n";
}

}  // namespace swale
