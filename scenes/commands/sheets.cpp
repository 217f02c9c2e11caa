#include "scenes/program/sheets.h"

#include "render/picture/painter.h"

namespace overbend::program {

namespace {

constexpr int page_height = 794;  // px of 0.75 pt: a sheet of A4 lying on its side
constexpr int png_height = 1588;

}  // namespace

void write_sheet(const std::function<render::DrawingList(int height)>& draw,
                 const std::filesystem::path& folder, const std::string& name) {
    const render::DrawingList page = draw(page_height);
    render::write_svg(page, folder / (name + ".svg"));
    render::write_pdf(page, folder / (name + ".pdf"));
    render::write_png(draw(png_height), folder / (name + ".png"));
}

}  // namespace overbend::program
