#include "render/picture/painter.h"

#include <cairo-pdf.h>
#include <cairo-svg.h>
#include <pango/pangocairo.h>

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <cstring>
#include <memory>
#include <stdexcept>
#include <unordered_map>

#include "render/output/whole_file.h"
#include "render/picture/fonts.h"
#include "render/picture/svg_names.h"
#include "sim/errors.h"

#if defined(__SANITIZE_ADDRESS__)
// Fontconfig and Pango keep font data until the program ends; that is not our leak, and
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

namespace overbend::picture {

namespace {

struct Release {
    void operator()(cairo_t* c) const { cairo_destroy(c); }
    void operator()(cairo_surface_t* s) const { cairo_surface_destroy(s); }
    void operator()(PangoFontDescription* d) const { pango_font_description_free(d); }
    void operator()(PangoLayout* l) const { g_object_unref(l); }
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
                         "it must be 1 to 16384 px wide and high");
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

void paint_item(cairo_t* cairo, const Shape& shape) {
    cairo_save(cairo);
    cairo_new_path(cairo);
    if (shape.clip) {
        cairo_rectangle(cairo, shape.clip->x, shape.clip->y, shape.clip->width, shape.clip->height);
        cairo_clip(cairo);
    }
    if (shape.edges == Edges::coarse) cairo_set_antialias(cairo, CAIRO_ANTIALIAS_FAST);
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

Handle<PangoLayout> laid_out(const Text& text) {
    Handle<PangoLayout> layout(pango_layout_new(font_context()));
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

// Pango's way to put a layout on a picture: its outlines on the path, or painted as text.
using PutLayout = void (*)(cairo_t*, PangoLayout*);

void put(cairo_t* cairo, const Text& text, PutLayout put_layout) {
    const Handle<PangoLayout> layout = laid_out(text);
    const Point origin = layout_origin(layout.get(), text.across);
    cairo_save(cairo);
    cairo_translate(cairo, text.at.x(), text.at.y());
    cairo_scale(cairo, text.size / layout_size, text.size / layout_size);
    cairo_move_to(cairo, origin.x(), origin.y());
    put_layout(cairo, layout.get());
    cairo_restore(cairo);
}

void paint_item(cairo_t* cairo, const Text& text) {
    cairo_new_path(cairo);
    put(cairo, text, pango_cairo_layout_path);
    if (text.halo) {
        set_colour(cairo, *text.halo);
        cairo_set_line_width(cairo, 0.25 * text.size);
        cairo_set_line_join(cairo, CAIRO_LINE_JOIN_ROUND);
        cairo_stroke_preserve(cairo);
        cairo_set_line_join(cairo, CAIRO_LINE_JOIN_MITER);
    }
    set_colour(cairo, text.colour);
    cairo_fill(cairo);
}

// Words as text of their font, for readers and searchers of the file.
void paint_as_text(cairo_t* cairo, const Text& text) {
    if (text.halo) {
        Text halo = text;
        halo.colour = *text.halo;
        paint_item(cairo, halo);
    }
    set_colour(cairo, text.colour);
    put(cairo, text, pango_cairo_show_layout);
}

void paint_as_text(cairo_t* cairo, const Shape& shape) {
    paint_item(cairo, shape);
}

// How much of each pixel a text covers, and where its upper left pixel is from the pixel that it stands at.
struct Mask {
    Handle<cairo_surface_t> surface;
    int x = 0;
    int y = 0;
};

Mask mask_of(const Text& text) {
    Rect box = painted_box(text);
    Mask mask;
    mask.x = static_cast<int>(std::floor(box.x)) - 1;
    mask.y = static_cast<int>(std::floor(box.y)) - 1;
    const int width = static_cast<int>(std::ceil(box.right())) + 1 - mask.x;
    const int height = static_cast<int>(std::ceil(box.bottom())) + 1 - mask.y;
    mask.surface.reset(cairo_image_surface_create(CAIRO_FORMAT_A8, width, height));
    check(cairo_surface_status(mask.surface.get()));
    cairo_surface_set_device_offset(mask.surface.get(), -mask.x, -mask.y);
    const Handle<cairo_t> cairo(cairo_create(mask.surface.get()));
    put(cairo.get(), text, pango_cairo_layout_path);
    cairo_fill(cairo.get());
    check(cairo_status(cairo.get()));
    cairo_surface_set_device_offset(mask.surface.get(), 0.0, 0.0);
    return mask;
}

// Words on pixels. Laying them out and filling them takes half the time of a picture, and in a film most are
// the same from frame to frame: so each thread keeps them.
void paint_on_pixels(cairo_t* cairo, const Text& text) {
    if (text.halo) {
        paint_item(cairo, text);
        return;
    }
    constexpr size_t most = 500;  // texts; numbers that run would fill the memory
    thread_local std::unordered_map<std::string, Mask> kept;
    const double left = std::floor(text.at.x());
    const double top = std::floor(text.at.y());
    Text near = text;  // within the first pixel
    near.at -= Point(left, top);
    char place[128];
    std::snprintf(place, sizeof place, "%d %d %a %a %a ", static_cast<int>(text.weight),
                  static_cast<int>(text.across), text.size, near.at.x(), near.at.y());
    const std::string key = place + text.words;
    auto found = kept.find(key);
    if (found == kept.end()) {
        if (kept.size() >= most) kept.clear();
        found = kept.emplace(key, mask_of(near)).first;
    }
    const Mask& mask = found->second;
    set_colour(cairo, text.colour);
    cairo_mask_surface(cairo, mask.surface.get(), left + mask.x, top + mask.y);
}

void paint_on_pixels(cairo_t* cairo, const Shape& shape) {
    paint_item(cairo, shape);
}

enum class Target { pixels, paths, text };

void paint_with(cairo_t* cairo, const DrawingList& list, Target target) {
    if (list.background.opacity > 0.0) {
        set_colour(cairo, list.background);
        cairo_paint(cairo);
    }
    const auto paint_one = [&](const auto& item) {
        if (target == Target::pixels)
            paint_on_pixels(cairo, item);
        else if (target == Target::text)
            paint_as_text(cairo, item);
        else
            paint_item(cairo, item);
    };
    for (const Item& item : list.items) std::visit(paint_one, item);
    check(cairo_status(cairo));
}

void paint_on(cairo_surface_t* surface, const DrawingList& list, Target target) {
    check(cairo_surface_status(surface));
    const Handle<cairo_t> cairo(cairo_create(surface));
    paint_with(cairo.get(), list, target);
}

void finish(cairo_surface_t* surface) {
    cairo_surface_finish(surface);
    check(cairo_surface_status(surface));
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
    into.alpha = list.background.opacity < 1.0 ? Alpha::premultiplied : Alpha::unused;
    into.bgra.resize(size_t{4} * list.width * list.height);
    const bool opaque = into.alpha == Alpha::unused;
    if (!opaque) std::fill(into.bgra.begin(), into.bgra.end(), std::uint8_t{0});
    const Handle<cairo_surface_t> surface(cairo_image_surface_create_for_data(
        into.bgra.data(), opaque ? CAIRO_FORMAT_RGB24 : CAIRO_FORMAT_ARGB32, list.width, list.height,
        4 * list.width));
    paint_on(surface.get(), list, Target::pixels);
    finish(surface.get());
}

void write_png(const DrawingList& list, const std::filesystem::path& path) {
    output::write_whole(path, png_bytes(paint(list)));
}

namespace {

std::string svg_of(const DrawingList& list, std::optional<cairo_svg_unit_t> unit) {
    check_size(list);
    std::string bytes;
    const Handle<cairo_surface_t> surface(
        cairo_svg_surface_create_for_stream(append, &bytes, list.width, list.height));
    if (unit) cairo_svg_surface_set_document_unit(surface.get(), *unit);
    paint_on(surface.get(), list, Target::paths);
    finish(surface.get());
    return with_title(with_own_names(without_surface_numbers(bytes)), list.title);
}

// unit: points of 1/72 inch.
std::string pdf_of(const std::vector<DrawingList>& pages, double unit) {
    if (pages.empty()) throw OutOfRange("pages", "0", "a document needs at least one");
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
        paint_with(cairo.get(), page, Target::text);
        cairo_show_page(cairo.get());
    }
    finish(surface.get());
    return bytes;
}

}  // namespace

std::string svg_bytes(const DrawingList& list) {
    return svg_of(list, {});
}

std::string svg_bytes_in_mm(const DrawingList& list) {
    return svg_of(list, CAIRO_SVG_UNIT_MM);
}

std::string pdf_bytes(const std::vector<DrawingList>& pages) {
    return pdf_of(pages, 0.75);
}

std::string pdf_bytes_in_mm(const std::vector<DrawingList>& pages) {
    return pdf_of(pages, 72.0 / 25.4);
}

void write_svg(const DrawingList& list, const std::filesystem::path& path) {
    output::write_whole(path, svg_bytes(list));
}

void write_pdf(const DrawingList& list, const std::filesystem::path& path) {
    output::write_whole(path, pdf_bytes({list}));
}

void write_pdf(const std::vector<DrawingList>& pages, const std::filesystem::path& path) {
    output::write_whole(path, pdf_bytes(pages));
}

Rect painted_box(const Text& text) {
    const Handle<PangoLayout> layout = laid_out(text);
    const Point origin = layout_origin(layout.get(), text.across);
    PangoRectangle ink;
    pango_layout_get_extents(layout.get(), &ink, nullptr);
    const double scale = text.size / layout_size;
    return {text.at.x() + scale * (origin.x() + static_cast<double>(ink.x) / PANGO_SCALE),
            text.at.y() + scale * (origin.y() + static_cast<double>(ink.y) / PANGO_SCALE),
            scale * ink.width / PANGO_SCALE, scale * ink.height / PANGO_SCALE};
}

}  // namespace overbend::picture
