// The workshop's drawings on a job's page: the same sheets as on paper, scaled for a screen.

#include "render/report/inline_svg.h"
#include "scenes/documents/report/page_parts.h"

namespace overbend::documents {

namespace {

constexpr double pixels_per_mm = 4.0;  // a tenth of a pixel, as the page has it, is then 0.025 mm

std::string caption(const Drawing& d) {
    std::string text = "Material: " + d.material + ". On paper " + d.sheet.paper + ", scale " +
                       d.sheet.scale_words + "; sizes in mm.";
    if (!d.sheet.missing.empty()) text += " Dimensions that do not fit are listed in a note.";
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
            std::string("The drawings show every tool used, the blank and the finished part. ") +
            "Click one to open it. overbend report writes them to figures/drawings: to scale on paper, and "
            "as DXF for wire erosion and laser. The bend lines of the blank are those used in the strokes of "
            "this page; the command drawings fits them to the drawing's legs first."};
}

}  // namespace overbend::documents
