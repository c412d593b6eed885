#include "io/markup_text.h"
#include "io/picture/axes.h"
#include "io/picture/base64.h"
#include "io/picture/cairo_files.h"
#include "io/picture/contour_lines.h"
#include "io/picture/scene.h"
#include "io/picture/simplified.h"
#include "io/picture/svg.h"
#include "io/report/page_parts.h"

#include <doctest/doctest.h>

#include <cmath>

using namespace swale;

namespace {

/// f = x + 2 y on uneven nodes.
GridField slope() {
    GridField field{{0, 1, 4, 10}, {-3, 0, 2}, Eigen::MatrixXd(4, 3)};
    for (int i = 0; i < 4; ++i)
        for (int j = 0; j < 3; ++j) field.values(i, j) = field.x[i] + 2 * field.y[j];
    return field;
}

/// Lightness L* of CIE 1976 from sRGB (IEC 61966-2-1): what is left of a colour in grey.
double lightness(Colour colour) {
    const auto light = [](unsigned char part) {
        const double shown = part / 255.0;
        return shown <= 0.04045 ? shown / 12.92 : std::pow((shown + 0.055) / 1.055, 2.4);
    };
    const double luminance = 0.2126 * light(colour.red) + 0.7152 * light(colour.green) + 0.0722 * light(colour.blue);
    return luminance > 0.008856 ? 116 * std::cbrt(luminance) - 16 : 903.3 * luminance;
}

}  // namespace

TEST_CASE("contour lines lie where the field has their value and cross the whole grid") {
    const GridField field = slope();
    const auto lines = contour_lines(field, 3);
    REQUIRE(lines.size() == 1);
    for (const Eigen::Vector2d& point : lines[0]) CHECK(point.x() + 2 * point.y() == doctest::Approx(3));
    const auto [low, high] = std::minmax(lines[0].front().x(), lines[0].back().x());
    CHECK(low == doctest::Approx(0));
    CHECK(high == doctest::Approx(9));
}

TEST_CASE("a field is bilinear between its nodes and constant beyond its border") {
    const Eigen::MatrixXd found = slope().on_lines(Eigen::Vector2d(2.5, 99), Eigen::Vector2d(1, 2));
    CHECK(found(0, 0) == doctest::Approx(4.5));
    CHECK(found(1, 1) == doctest::Approx(14));
}

TEST_CASE("scales go from round number to round number and hold the range") {
    const ColourScale scale = colour_scale(0.563, 0.936, false);
    CHECK(scale.low <= 0.563);
    CHECK(scale.high >= 0.936);
    CHECK(scale.low == doctest::Approx(0.55));
    CHECK(scale.high == doctest::Approx(0.95));
    const ColourScale about_zero = colour_scale(-0.2, 0.9, true);
    CHECK(about_zero.low == doctest::Approx(-about_zero.high));
}

TEST_CASE("the sequential colours grow lighter in even steps so that they are told apart in grey") {
    const double span = lightness(page_parts::sequential[255]) - lightness(page_parts::sequential[0]);
    CHECK(span > 60);
    for (size_t i = 0; i + 32 < 256; i += 32) {
        const double step = lightness(page_parts::sequential[i + 32]) - lightness(page_parts::sequential[i]);
        CHECK(step > 0.06 * span);
        CHECK(step < 0.2 * span);
    }
}

TEST_CASE("labels of steps have as many decimals as the step needs") {
    CHECK(step_labels(round_steps(0, 0.1, 4)) == std::vector<std::string>{"0.000", "0.025", "0.050", "0.075", "0.100"});
    CHECK(step_labels(round_steps(-600, 600, 6)).front() == "-600");
}

TEST_CASE("base64 is that of RFC 4648 and its test vectors") {
    CHECK(base64("") == "");
    CHECK(base64("f") == "Zg==");
    CHECK(base64("fo") == "Zm8=");
    CHECK(base64("foobar") == "Zm9vYmFy");
}

TEST_CASE("hostile text is text in a drawing") {
    Drawing drawing{100, 50, "</title><script>", "\"&'"};
    drawing.add(Words{{5, 5}, "<b onclick=x>\x01", 12});
    const std::string text = svg(drawing, "a\"b");
    CHECK(text.find("<script") == std::string::npos);
    CHECK(text.find("<b ") == std::string::npos);
    CHECK(text.find('\x01') == std::string::npos);
    CHECK(text.find("data-drawing=\"a&quot;b\"") != std::string::npos);
}

TEST_CASE("characters that turn the direction of writing are shown by their codes and others are left alone") {
    CHECK(escaped("a\u202eb\u2069c\u200f") == "a[U+202E]b[U+2069]c[U+200F]");
    CHECK(escaped("\u05de \u2013 \u2264 \u2028") == "\u05de \u2013 \u2264 \u2028");
}

TEST_CASE("a line's points may only be left out where nobody sees it") {
    Drawing drawing{100, 100, "", ""};
    Stroke stroke;
    for (int i = 0; i <= 50; ++i) stroke.points.emplace_back(i, 0.001 * i * i);
    drawing.add(stroke);
    const std::string text = svg(drawing);
    CHECK(std::count(text.begin(), text.end(), 'L') < 25);
    CHECK(text.find("L50 2.5\"") != std::string::npos);
}

TEST_CASE("of two facets the nearer one is seen") {
    const auto square = [](double z, Colour colour) {
        return Facet3{{Eigen::Vector3d(0, 0, z), Eigen::Vector3d(10, 0, z), Eigen::Vector3d(0, 10, z)}, {}, false, colour};
    };
    Scene scene{{square(5, {200, 0, 0}), square(0, {0, 0, 200})}, {}, {}, 0, 1.55};
    const Drawing drawing = draw(scene, "", 40);
    const Raster& raster = std::get<Patchwork>(drawing.marks[0]).raster;
    const Colour middle = raster.pixels[static_cast<size_t>(raster.height / 2) * raster.width + raster.width / 4];
    CHECK(middle.red > 100);
    CHECK(middle.blue == 0);
}

TEST_CASE("pictures of one drawing have the same bytes every time") {
    Drawing drawing{60, 40, "t", "d"};
    drawing.add(Area{{{0, 0}, {30, 0}, {30, 30}}});
    CHECK(png(drawing) == png(drawing));
    CHECK(pdf(drawing, "2026-01-02T03:04:05Z") == pdf(drawing, "2026-01-02T03:04:05Z"));
    CHECK(png(drawing).substr(1, 3) == "PNG");
    CHECK(pdf(drawing, "2026-01-02T03:04:05Z").starts_with("%PDF"));
}

TEST_CASE("a simplified line reads the same to what may be off and has fewer points") {
    std::vector<Eigen::Vector2d> line;
    for (int k = 0; k <= 400; ++k) line.emplace_back(k, std::sin(0.02 * k) + (k == 201 ? 0.3 : 0));
    const auto thin = simplified(line, 1e-3);
    CHECK(thin.size() < line.size() / 3);
    std::size_t at = 0;
    for (const Eigen::Vector2d& point : line) {
        while (thin[at + 1].x() < point.x()) ++at;
        const Eigen::Vector2d &from = thin[at], &to = thin[at + 1];
        const double read = from.y() + (point.x() - from.x()) / (to.x() - from.x()) * (to.y() - from.y());
        CHECK(std::abs(read - point.y()) <= 1.0001e-3);
    }
}
