#include "render/report/inline_svg.h"

#include <cmath>

#include "render/picture/palette.h"
#include "render/picture/text_width.h"
#include "render/report/html.h"
#include "sim/words.h"

namespace overbend::report {

using namespace picture;

namespace {

// As few letters as a tenth of a pixel needs.
std::string tenths(double value) {
    const long n = std::lround(value * 10.0);
    const long whole = std::labs(n) / 10, part = std::labs(n) % 10;
    std::string text = n < 0 ? "-" : "";
    if (whole != 0 || part == 0) text += std::to_string(whole);
    if (part != 0) text += "." + std::to_string(part);
    return text;
}

std::string point(const Point& p) {
    return tenths(p.x()) + " " + tenths(p.y());
}

std::string paint(const char* what, const std::optional<Colour>& colour) {
    if (!colour) return words(" %s=\"none\"", what);
    std::string text = words(" %s=\"", what) + hex(*colour) + "\"";
    if (colour->opacity < 1.0) text += words(" %s-opacity=\"%.3g\"", what, colour->opacity);
    return text;
}

// What is clipped stands in an element of its own, which clips at its edges.
std::string clipped(const Rect& clip, const std::string& inner) {
    return words("<svg x=\"%.4g\" y=\"%.4g\" width=\"%.4g\" height=\"%.4g\" viewBox=\"%.4g %.4g %.4g %.4g\">",
                 clip.x, clip.y, clip.width, clip.height, clip.x, clip.y, clip.width, clip.height) +
           inner + "</svg>";
}

std::string element(const Shape& s) {
    std::string text =
        "<path d=\"" + svg_path(s.path) + "\"" + (s.fill ? paint("fill", s.fill) : " fill=\"none\"");
    if (s.stroke) {
        text += paint("stroke", s.stroke) + " stroke-width=\"" + words("%.3g", s.line_width) + "\"";
        if (!s.dash.empty()) {
            text += " stroke-dasharray=\"";
            for (const double d : s.dash) text += words("%.3g ", d);
            text.back() = '"';
        }
    }
    text += "/>";
    return s.clip ? clipped(*s.clip, text) : text;
}

std::string element(const Text& t) {
    static const char* const anchors[] = {"start", "middle", "end"};
    std::string text = "<text x=\"" + tenths(t.at.x()) + "\" y=\"" + tenths(t.at.y()) + "\" font-size=\"" +
                       words("%.4g", t.size) + "\"" + paint("fill", t.colour);
    if (t.across != Across::left) text += words(" text-anchor=\"%s\"", anchors[static_cast<int>(t.across)]);
    if (t.weight == Weight::bold) text += " font-weight=\"bold\"";
    if (t.halo)
        text +=
            paint("stroke", t.halo) +
            words(" stroke-width=\"%.3g\" paint-order=\"stroke\" stroke-linejoin=\"round\"", 0.22 * t.size);
    text += " textLength=\"" + tenths(text_width(t.words, t.size, t.weight)) +
            "\" lengthAdjust=\"spacingAndGlyphs\">";
    return text + escaped(t.words) + "</text>";
}

}  // namespace

std::string svg_path(const Path& path) {
    std::string d;
    for (const Segment& s : path) {
        if (s.verb == Verb::move) d += "M" + point(s.to);
        if (s.verb == Verb::line) d += "L" + point(s.to);
        if (s.verb == Verb::curve)
            d += "C" + point(s.handle_start) + " " + point(s.handle_end) + " " + point(s.to);
        if (s.verb == Verb::close) d += "Z";
    }
    return d;
}

std::string inline_svg(const DrawingList& list, const std::string& label) {
    std::string svg = words("<svg class=\"drawing\" viewBox=\"0 0 %d %d\" role=\"img\" aria-label=\"",
                            list.width, list.height) +
                      escaped(label) + "\">" +
                      words("<rect width=\"%d\" height=\"%d\"", list.width, list.height) +
                      paint("fill", list.background) + "/>";
    for (const Item& item : list.items)
        svg += std::visit([](const auto& it) { return element(it); }, item) + "\n";
    return svg + "</svg>";
}

}  // namespace overbend::report
