#include "io/picture/cairo_files.h"

#include "io/terminal/plain_text.h"

#include <cairo-pdf.h>
#include <cairo.h>

#include <cmath>
#include <cstdint>
#include <memory>
#include <stdexcept>

namespace swale {

namespace {

using Surface = std::unique_ptr<cairo_surface_t, decltype(&cairo_surface_destroy)>;
using Context = std::unique_ptr<cairo_t, decltype(&cairo_destroy)>;

void require(cairo_status_t status) {
    if (status != CAIRO_STATUS_SUCCESS)
        throw std::runtime_error(std::string("a picture can't be drawn: ") + cairo_status_to_string(status));
}

cairo_status_t append(void* text, const unsigned char* bytes, unsigned count) {
    static_cast<std::string*>(text)->append(reinterpret_cast<const char*>(bytes), count);
    return CAIRO_STATUS_SUCCESS;
}

Surface image_surface(const Raster& raster) {
    Surface surface(cairo_image_surface_create(CAIRO_FORMAT_ARGB32, raster.width, raster.height), cairo_surface_destroy);
    require(cairo_surface_status(surface.get()));
    unsigned char* bytes = cairo_image_surface_get_data(surface.get());
    const int stride = cairo_image_surface_get_stride(surface.get());
    for (int row = 0; row < raster.height; ++row) {
        auto* line = reinterpret_cast<std::uint32_t*>(bytes + row * stride);
        for (int column = 0; column < raster.width; ++column) {
            const size_t at = static_cast<size_t>(row) * raster.width + column;
            const Colour colour = raster.pixels[at];
            const bool seen = raster.alpha.empty() || raster.alpha[at] > 0;
            line[column] = seen ? 0xFF000000u | colour.red << 16u | colour.green << 8u | colour.blue : 0u;
        }
    }
    cairo_surface_mark_dirty(surface.get());
    return surface;
}

std::string png_of(cairo_surface_t* surface) {
    std::string bytes;
    require(cairo_surface_write_to_png_stream(surface, append, &bytes));
    return bytes;
}

void set_colour(cairo_t* context, Colour colour, double opacity = 1) {
    cairo_set_source_rgba(context, colour.red / 255.0, colour.green / 255.0, colour.blue / 255.0, opacity);
}

void set_pen(cairo_t* context, const Pen& pen) {
    set_colour(context, pen.colour);
    cairo_set_line_width(context, pen.width);
    cairo_set_dash(context, pen.dashes.data(), static_cast<int>(pen.dashes.size()), 0);
    cairo_set_line_join(context, CAIRO_LINE_JOIN_ROUND);
}

void trace(cairo_t* context, const std::vector<Eigen::Vector2d>& points) {
    for (const Eigen::Vector2d& point : points) cairo_line_to(context, point.x(), point.y());
}

void cut_off(cairo_t* context, const std::optional<Box>& inside) {
    if (!inside) return;
    cairo_rectangle(context, inside->left, inside->top, inside->width(), inside->height());
    cairo_clip(context);
}

void paint(cairo_t* context, const Stroke& stroke) {
    cut_off(context, stroke.inside);
    trace(context, stroke.points);
    set_pen(context, stroke.pen);
    cairo_stroke(context);
}

void paint(cairo_t* context, const Area& area) {
    cut_off(context, area.inside);
    trace(context, area.points);
    cairo_close_path(context);
    set_colour(context, area.fill, area.opacity);
    cairo_fill_preserve(context);
    if (area.outline) {
        set_pen(context, *area.outline);
        cairo_stroke(context);
    }
    cairo_new_path(context);
}

void paint(cairo_t* context, const Words& words) {
    const std::string text = printable(words.text);
    cairo_select_font_face(context, "DejaVu Sans", CAIRO_FONT_SLANT_NORMAL,
                           words.bold ? CAIRO_FONT_WEIGHT_BOLD : CAIRO_FONT_WEIGHT_NORMAL);
    cairo_set_font_size(context, words.size * 0.95);  // DejaVu is wide
    cairo_text_extents_t extents;
    cairo_text_extents(context, text.c_str(), &extents);
    const double share = words.anchor == Anchor::start ? 0 : words.anchor == Anchor::middle ? 0.5 : 1;
    cairo_move_to(context, words.at.x() - share * extents.x_advance, words.at.y());
    cairo_text_path(context, text.c_str());
    if (words.halo) {
        set_pen(context, {ink::paper, 3});
        cairo_stroke_preserve(context);
    }
    set_colour(context, words.colour);
    cairo_fill(context);
}

void paint(cairo_t* context, const Patchwork& patch) {
    const Surface image = image_surface(patch.raster);
    cairo_translate(context, patch.box.left, patch.box.top);
    cairo_scale(context, patch.box.width() / patch.raster.width, patch.box.height() / patch.raster.height);
    cairo_set_source_surface(context, image.get(), 0, 0);
    cairo_pattern_set_filter(cairo_get_source(context), CAIRO_FILTER_GOOD);
    cairo_paint(context);
}

void paint_all(cairo_surface_t* surface, const Drawing& drawing, double scale) {
    const Context context(cairo_create(surface), cairo_destroy);
    cairo_scale(context.get(), scale, scale);
    set_colour(context.get(), ink::paper);
    cairo_paint(context.get());
    for (const Mark& mark : drawing.marks) {
        cairo_save(context.get());
        std::visit([&](const auto& shape) { paint(context.get(), shape); }, mark);
        cairo_restore(context.get());
    }
    require(cairo_status(context.get()));
}

}  // namespace

std::string png(const Raster& raster) {
    return png_of(image_surface(raster).get());
}

std::string png(const Drawing& drawing, double scale) {
    const Surface surface(cairo_image_surface_create(CAIRO_FORMAT_RGB24, static_cast<int>(std::lround(drawing.width * scale)),
                                                     static_cast<int>(std::lround(drawing.height * scale))),
                          cairo_surface_destroy);
    require(cairo_surface_status(surface.get()));
    paint_all(surface.get(), drawing, scale);
    return png_of(surface.get());
}

std::string pdf(const Drawing& drawing, const std::string& created) {
    constexpr double points = 0.75;  // of 1/72 in a pixel of 1/96 in
    std::string bytes;
    {
        const Surface surface(
            cairo_pdf_surface_create_for_stream(append, &bytes, drawing.width * points, drawing.height * points),
            cairo_surface_destroy);
        require(cairo_surface_status(surface.get()));
        cairo_pdf_surface_set_metadata(surface.get(), CAIRO_PDF_METADATA_TITLE, printable(drawing.title).c_str());
        cairo_pdf_surface_set_metadata(surface.get(), CAIRO_PDF_METADATA_CREATE_DATE, created.c_str());
        paint_all(surface.get(), drawing, points);
        cairo_surface_finish(surface.get());
        require(cairo_surface_status(surface.get()));
    }
    return bytes;
}

}  // namespace swale
