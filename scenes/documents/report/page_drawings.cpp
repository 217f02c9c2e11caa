// The workshop's drawings on a job's page: the same sheets as on paper, scaled for a screen.

#include "render/report/inline_svg.h"
#include "scenes/documents/report/page_parts.h"
#include "sim/words.h"

namespace overbend::documents {

namespace {

constexpr double pixels_per_mm = 4.0;  // a tenth of a pixel, as the page has it, is then 0.025 mm

std::string caption(const Drawing& d) {
    std::string text = "Material: " + d.material + ". On paper " + d.sheet.paper + ", scale " +
                       d.sheet.scale_words + "; sizes in mm.";
    if (!d.sheet.missing.empty()) text += " Sizes that found no room are told in a note.";
    return text;
}

}  // namespace

void add_drawings(const std::vector<Drawing>& drawings, report::Page& page) {
    for (const Drawing& d : drawings)
        page.drawings.push_back(
            {d.name,
             {report::inline_svg(picture::scaled(d.sheet.list, pixels_per_mm), "Drawing of " + d.name),
              caption(d)}});
    if (!drawings.empty())
        page.drawing_words = {
            words("%zu drawings: every tool that the strokes use, the blank and the finished part. ",
                  drawings.size()) +
            "They open at a click. overbend report writes them, to scale on paper and as DXF for wire and "
            "laser, to figures/drawings. Bend lines of the blank are those that the strokes of this page "
            "were "
            "bent with; the command drawings fits them to the drawing's legs first."};
}

}  // namespace overbend::documents
