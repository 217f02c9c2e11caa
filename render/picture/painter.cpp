#include "render/picture/painter.h"

#include <cairo-pdf.h>
#include <cairo-svg.h>
#include <pango/pangocairo.h>

#include <cerrno>
#include <cstring>
#include <fstream>
#include <memory>
#include <stdexcept>

#include "render/picture/svg_names.h"
#include "sim/errors.h"

#if defined(__SANITIZE_ADDRESS__)
// Fontconfig and Pango keep what they know of the fonts until the program ends; that is no leak of ours, and
// stderr is to stay empty of it. The names are the sanitizer's own hooks.
extern "C" const char* __lsan_default_suppressions() {
    return "leak:libfontconfig\nleak:libpango\n";
}
extern "C" const char* __lsan_default_options() {
    return "print_suppressions=0";
}
#endif
#if defined(__SANITIZE_THREAD__)
// These libraries guard what threads share with atomics and futexes of their own, which the thread sanitizer
// does not see: they were not built with it. What our own code calls is still watched.
extern "C" const char* __tsan_default_suppressions() {
    return "called_from_lib:libcairo.so\n"
           "called_from_lib:libfontconfig.so\n"
           "called_from_lib:libglib-2.0.so\n"
           "called_from_lib:libharfbuzz.so\n"
           "called_from_lib:libpango-1.0.so\n"
           "called_from_lib:libpangocairo-1.0.so\n"
           "called_from_lib:libpangoft2-1.0.so\n";
}
#endif

namespace overbend::render {

namespace {

struct Release {
    void operator()(cairo_t* c) const { cairo_destroy(c); }
    void operator()(cairo_surface_t* s) const { cairo_surface_destroy(s); }
    void operator()(cairo_font_options_t* o) const { cairo_font_options_destroy(o); }
    void operator()(PangoFontDescription* d) const { pango_font_description_free(d); }
    void operator()(PangoLayout* l) const { g_object_unref(l); }
    void operator()(PangoContext* c) const { g_object_unref(c); }
};
template <typename T>
using Handle = std::unique_ptr<T, Release>;

void check(cairo_status_t status) {
    if (status != CAIRO_STATUS_SUCCESS)
        throw std::runtime_error(std::string("picture cannot be painted: ") + cairo_status_to_string(status));
}

void check_size(const DrawingList& list) {
    if (list.width < 1 || list.height < 1 || list.width > 16384 || list.height > 16384)
        throw OutOfRange("picture size",
                         std::to_string(list.width) + " x " + std::to_string(list.height) + " px",
                         "it must be 1 to 16384 px either way");
}

void set_colour(cairo_t* cairo, const Colour& c) {
    cairo_set_source_rgba(cairo, c.red, c.green, c.blue, c.opacity);
}

void trace(cairo_t* cairo, const Path& path) {
    cairo_new_path(cairo);
    for (const Segment& s : path) switch (s.verb) {
            case Verb::move:
                cairo_move_to(cairo, s.to.x(), s.to.y());
                break;
            case Verb::line:
                cairo_line_to(cairo, s.to.x(), s.to.y());
                break;
            case Verb::curve:
                cairo_curve_to(cairo, s.handle_start.x(), s.handle_start.y(), s.handle_end.x(),
                               s.handle_end.y(), s.to.x(), s.to.y());
                break;
            case Verb::close:
                cairo_close_path(cairo);
                break;
        }
}

// What becomes of words: shapes like all others, or text of a font.
enum class Words { outlines, text };

void paint_item(cairo_t* cairo, const Shape& shape, Words) {
    cairo_save(cairo);
    cairo_new_path(cairo);
    if (shape.clip) {
        cairo_rectangle(cairo, shape.clip->x, shape.clip->y, shape.clip->width, shape.clip->height);
        cairo_clip(cairo);
    }
    trace(cairo, shape.path);
    if (shape.fill) {
        set_colour(cairo, *shape.fill);
        cairo_fill_preserve(cairo);
    }
    if (shape.stroke) {
        set_colour(cairo, *shape.stroke);
        cairo_set_line_width(cairo, shape.line_width);
        cairo_set_line_join(cairo, CAIRO_LINE_JOIN_ROUND);
        if (!shape.dash.empty())
            cairo_set_dash(cairo, shape.dash.data(), static_cast<int>(shape.dash.size()), 0.0);
        cairo_stroke(cairo);
    }
    cairo_restore(cairo);
}

// The words as Pango lays them out in a large font size; painted at any size by scaling, so that letters keep
// their distances and no rounding to pixels is left.
constexpr double layout_size = 100.0;

Handle<PangoLayout> laid_out(cairo_t* cairo, const Text& text) {
    Handle<PangoContext> context(pango_cairo_create_context(cairo));
    Handle<cairo_font_options_t> options(cairo_font_options_create());
    cairo_font_options_set_hint_style(options.get(), CAIRO_HINT_STYLE_NONE);
    cairo_font_options_set_hint_metrics(options.get(), CAIRO_HINT_METRICS_OFF);
    cairo_font_options_set_antialias(options.get(), CAIRO_ANTIALIAS_GRAY);
    pango_cairo_context_set_font_options(context.get(), options.get());
    pango_cairo_context_set_resolution(context.get(), 72.0);
    Handle<PangoLayout> layout(pango_layout_new(context.get()));
    Handle<PangoFontDescription> font(pango_font_description_new());
    pango_font_description_set_family_static(font.get(), "DejaVu Sans");
    pango_font_description_set_weight(font.get(),
                                      text.weight == Weight::bold ? PANGO_WEIGHT_BOLD : PANGO_WEIGHT_NORMAL);
    pango_font_description_set_absolute_size(font.get(), layout_size * PANGO_SCALE);
    pango_layout_set_font_description(layout.get(), font.get());
    pango_layout_set_single_paragraph_mode(layout.get(), TRUE);
    pango_layout_set_text(layout.get(), text.words.data(), static_cast<int>(text.words.size()));
    return layout;
}

// Where the layout's upper left corner comes, in units of the layout's own size.
Point layout_origin(PangoLayout* layout, Across across) {
    PangoRectangle box;
    pango_layout_get_extents(layout, nullptr, &box);
    const double part = across == Across::left ? 0.0 : across == Across::middle ? 0.5 : 1.0;
    return {-part * box.width / PANGO_SCALE,
            -static_cast<double>(pango_layout_get_baseline(layout)) / PANGO_SCALE};
}

void paint_item(cairo_t* cairo, const Text& text, Words how) {
    const Handle<PangoLayout> layout = laid_out(cairo, text);
    const Point origin = layout_origin(layout.get(), text.across);
    cairo_save(cairo);
    cairo_translate(cairo, text.at.x(), text.at.y());
    cairo_scale(cairo, text.size / layout_size, text.size / layout_size);
    cairo_new_path(cairo);
    cairo_move_to(cairo, origin.x(), origin.y());
    if (text.halo || how == Words::outlines) pango_cairo_layout_path(cairo, layout.get());
    if (text.halo) {
        set_colour(cairo, *text.halo);
        cairo_set_line_width(cairo, 0.25 * layout_size);
        cairo_set_line_join(cairo, CAIRO_LINE_JOIN_ROUND);
        cairo_stroke_preserve(cairo);
    }
    set_colour(cairo, text.colour);
    if (how == Words::outlines) {
        cairo_fill(cairo);
    } else {
        cairo_new_path(cairo);
        cairo_move_to(cairo, origin.x(), origin.y());
        pango_cairo_show_layout(cairo, layout.get());
    }
    cairo_restore(cairo);
}

void paint_with(cairo_t* cairo, const DrawingList& list, Words how) {
    set_colour(cairo, list.background);
    cairo_paint(cairo);
    for (const Item& item : list.items) std::visit([&](const auto& i) { paint_item(cairo, i, how); }, item);
    check(cairo_status(cairo));
}

void paint_on(cairo_surface_t* surface, const DrawingList& list) {
    check(cairo_surface_status(surface));
    const Handle<cairo_t> cairo(cairo_create(surface));
    paint_with(cairo.get(), list, Words::outlines);
}

// Cairo hands out its bytes piece by piece.
cairo_status_t append(void* bytes, const unsigned char* piece, unsigned int length) {
    static_cast<std::string*>(bytes)->append(reinterpret_cast<const char*>(piece), length);
    return CAIRO_STATUS_SUCCESS;
}

}  // namespace

Pixels paint(const DrawingList& list) {
    Pixels pixels;
    paint(list, pixels);
    return pixels;
}

void paint(const DrawingList& list, Pixels& into) {
    check_size(list);
    into.width = list.width;
    into.height = list.height;
    into.bgra.resize(size_t{4} * list.width * list.height);
    const Handle<cairo_surface_t> surface(cairo_image_surface_create_for_data(
        into.bgra.data(), CAIRO_FORMAT_RGB24, list.width, list.height, 4 * list.width));
    paint_on(surface.get(), list);
    cairo_surface_finish(surface.get());
    check(cairo_surface_status(surface.get()));
}

void write_whole(const std::filesystem::path& path, const std::string& bytes) {
    std::filesystem::path beside = path;
    beside += ".part";
    std::ofstream out(beside, std::ios::binary | std::ios::trunc);
    out.write(bytes.data(), static_cast<std::streamsize>(bytes.size()));
    out.close();
    std::error_code error;
    if (out) std::filesystem::rename(beside, path, error);
    if (out && !error) return;
    std::error_code ignored;
    std::filesystem::remove(beside, ignored);
    throw std::runtime_error("picture cannot be written: " + path.string() + ": " +
                             (error ? error.message() : std::strerror(errno)));
}

void write_png(const DrawingList& list, const std::filesystem::path& path) {
    write_whole(path, png_bytes(paint(list)));
}

std::string svg_bytes(const DrawingList& list) {
    check_size(list);
    std::string bytes;
    const Handle<cairo_surface_t> surface(
        cairo_svg_surface_create_for_stream(append, &bytes, list.width, list.height));
    paint_on(surface.get(), list);
    cairo_surface_finish(surface.get());
    check(cairo_surface_status(surface.get()));
    return with_own_names(with_title(without_surface_numbers(bytes), list.title));
}

std::string svg_bytes_in_mm(const DrawingList& list) {
    check_size(list);
    std::string bytes;
    const Handle<cairo_surface_t> surface(
        cairo_svg_surface_create_for_stream(append, &bytes, list.width, list.height));
    cairo_svg_surface_set_document_unit(surface.get(), CAIRO_SVG_UNIT_MM);
    paint_on(surface.get(), list);
    cairo_surface_finish(surface.get());
    check(cairo_surface_status(surface.get()));
    return with_own_names(with_title(without_surface_numbers(bytes), list.title));
}

namespace {

// unit: points of 1/72 inch.
std::string pdf_of(const std::vector<DrawingList>& pages, double unit) {
    if (pages.empty()) throw OutOfRange("pages", "0", "a document has one at least");
    for (const DrawingList& page : pages) check_size(page);
    std::string bytes;
    const Handle<cairo_surface_t> surface(cairo_pdf_surface_create_for_stream(
        append, &bytes, unit * pages.front().width, unit * pages.front().height));
    check(cairo_surface_status(surface.get()));
    // A fixed date: the same list gives the same file.
    cairo_pdf_surface_set_metadata(surface.get(), CAIRO_PDF_METADATA_CREATE_DATE, "2000-01-01T00:00:00Z");
    if (!pages.front().title.empty())
        cairo_pdf_surface_set_metadata(surface.get(), CAIRO_PDF_METADATA_TITLE, pages.front().title.c_str());
    for (const DrawingList& page : pages) {
        cairo_pdf_surface_set_size(surface.get(), unit * page.width, unit * page.height);
        const Handle<cairo_t> cairo(cairo_create(surface.get()));
        cairo_scale(cairo.get(), unit, unit);
        paint_with(cairo.get(), page, Words::text);
        cairo_show_page(cairo.get());
    }
    cairo_surface_finish(surface.get());
    check(cairo_surface_status(surface.get()));
    return bytes;
}

}  // namespace

std::string pdf_bytes(const std::vector<DrawingList>& pages) {
    return pdf_of(pages, 0.75);
}

std::string pdf_bytes_in_mm(const std::vector<DrawingList>& pages) {
    return pdf_of(pages, 72.0 / 25.4);
}

void write_svg(const DrawingList& list, const std::filesystem::path& path) {
    write_whole(path, svg_bytes(list));
}

void write_pdf(const DrawingList& list, const std::filesystem::path& path) {
    write_whole(path, pdf_bytes({list}));
}

void write_pdf(const std::vector<DrawingList>& pages, const std::filesystem::path& path) {
    write_whole(path, pdf_bytes(pages));
}

Rect painted_box(const Text& text) {
    const Handle<cairo_surface_t> surface(cairo_image_surface_create(CAIRO_FORMAT_RGB24, 1, 1));
    const Handle<cairo_t> cairo(cairo_create(surface.get()));
    const Handle<PangoLayout> layout = laid_out(cairo.get(), text);
    const Point origin = layout_origin(layout.get(), text.across);
    PangoRectangle ink;
    pango_layout_get_extents(layout.get(), &ink, nullptr);
    const double scale = text.size / layout_size;
    return {text.at.x() + scale * (origin.x() + static_cast<double>(ink.x) / PANGO_SCALE),
            text.at.y() + scale * (origin.y() + static_cast<double>(ink.y) / PANGO_SCALE),
            scale * ink.width / PANGO_SCALE, scale * ink.height / PANGO_SCALE};
}

}  // namespace overbend::render
