#include "render/picture/layout.h"

#include <algorithm>

#include "sim/errors.h"

namespace overbend::picture {

namespace {

constexpr double row = 1.72;  // units, height of a line of readouts
constexpr double press_height = 4.0 * row;
constexpr double bends_height = 5.0 * row;
constexpr double legend_height = 7.6;
constexpr double pad = 0.8;  // units, within the panel
constexpr double gap = 1.2;  // units, between columns

// The panel to the right, everything one below the other.
void lay_out_wide(const PictureSize& size, double margin, Layout& at) {
    const double u = at.unit;
    const double panel_width = 17.0 * u;
    at.panel = {size.width - margin - panel_width, at.head.bottom(), panel_width,
                at.caption.y - at.head.bottom()};
    at.stage = {margin, at.head.bottom(), at.panel.x - 2.0 * margin, at.panel.height};
    const Rect inner = grown(at.panel, -pad * u);
    at.press = {inner.x, inner.y, inner.width, press_height * u};
    at.bends = {inner.x, at.press.bottom() + 0.7 * u, inner.width, bends_height * u};
    at.legend = {inner.x, inner.bottom() - legend_height * u, inner.width, legend_height * u};
    const double below = at.bends.bottom() + 1.0 * u;
    at.curve = {inner.x, below, inner.width, at.legend.y - below - 1.0 * u};
}

// The panel below, readouts side by side; the legend beside them or, on a narrow picture, below.
void lay_out_tall(const PictureSize& size, double margin, Layout& at) {
    const double u = at.unit;
    const double width = size.width - 2.0 * margin - 2.0 * pad * u;
    const bool three = width > 34.0 * u;
    const double panel_height = (bends_height + 2.0 * pad + (three ? 0.0 : legend_height + 0.6)) * u;
    at.panel = {margin, at.caption.y - panel_height, size.width - 2.0 * margin, panel_height};
    at.stage = {margin, at.head.bottom(), at.panel.width, at.panel.y - margin - at.head.bottom()};
    const Rect inner = grown(at.panel, -pad * u);
    const double free = width - (three ? 2.0 : 1.0) * gap * u;
    at.press = {inner.x, inner.y, (three ? 0.35 : 0.545) * free, press_height * u};
    at.bends = {at.press.right() + gap * u, inner.y, (three ? 0.35 : 0.455) * free, bends_height * u};
    at.legend = {inner.x, at.bends.bottom() + 0.6 * u, inner.width, legend_height * u};
    if (three) at.legend = {at.bends.right() + gap * u, inner.y, 0.3 * free, legend_height * u};
}

// No panel: the legend lies in the stage's lower right corner, beside the scale or above it.
void lay_out_bare(const PictureSize& size, double margin, Layout& at) {
    const double u = at.unit;
    at.panel = {size.width - margin, at.head.bottom(), 0.0, 0.0};
    at.stage = {margin, at.head.bottom(), size.width - 2.0 * margin, at.caption.y - at.head.bottom()};
    const double wanted = at.stage.width > 72.0 * u ? legend_with_elastic : 27.0;
    const double width = std::min(wanted * u, at.stage.width - 1.2 * u);
    const bool beside = at.stage.width > 24.5 * u + width + 1.8 * u;
    at.legend = {at.stage.right() - 0.6 * u - width, at.stage.bottom() - (beside ? 2.6 : 4.9) * u, width,
                 2.0 * u};
}

}  // namespace

void check_size(const PictureSize& size) {
    const std::string found = std::to_string(size.width) + " x " + std::to_string(size.height) + " px";
    if (size.width < 320 || size.width > 3840 || size.height < 180 || size.height > 2160)
        throw OutOfRange("picture size", found, "it must be 320 to 3840 px wide and 180 to 2160 px high");
    if (16 * size.width < 9 * size.height)
        throw OutOfRange("picture size", found + " is too narrow for text of a readable size",
                         "the width must be at least 9/16 of the height");
}

Layout lay_out(const PictureSize& size, Charts charts) {
    check_size(size);
    Layout at;
    at.unit = size.height / 42.0;
    at.line = std::max(0.75, at.unit / 14.0);
    at.narrow = size.width < 30.0 * at.unit;
    const double u = at.unit;
    const double margin = 0.9 * u;
    const double aspect = static_cast<double>(size.width) / size.height;
    at.caption_lines = aspect > 1.7 ? 1 : aspect > 0.75 ? 2 : 3;
    const double caption_height = (1.5 + 1.55 * at.caption_lines) * u;
    at.head = {margin, 0.0, size.width - 2.0 * margin, 3.2 * u};
    at.caption = {margin, size.height - caption_height, at.head.width, caption_height};
    if (charts == Charts::hidden)
        lay_out_bare(size, margin, at);
    else if (aspect >= 1.2)
        lay_out_wide(size, margin, at);
    else
        lay_out_tall(size, margin, at);
    return at;
}

}  // namespace overbend::picture
