#include "scenes/commands/sheets.h"

#include "render/picture/painter.h"

namespace overbend::commands {

namespace {

constexpr int page_height = 794;  // px of 0.75 pt: a sheet of A4 lying on its side
constexpr int png_height = 1588;

}  // namespace

void write_sheet(const std::function<picture::DrawingList(int height)>& draw,
                 const std::filesystem::path& folder, const std::string& name) {
    const picture::DrawingList page = draw(page_height);
    picture::write_svg(page, folder / (name + ".svg"));
    picture::write_pdf(page, folder / (name + ".pdf"));
    picture::write_png(draw(png_height), folder / (name + ".png"));
}

}  // namespace overbend::commands
