#include "scenes/program/drawing_files.h"

#include "render/picture/painter.h"
#include "scenes/dxf/write_dxf.h"
#include "scenes/exchange/whole_file.h"

namespace overbend::program {

int write_drawings(const std::vector<scenes::Drawing>& drawings, const std::filesystem::path& folder,
                   DrawingKinds kinds) {
    int written = 0;
    const auto write = [&](const std::string& name, const std::string& bytes) {
        scenes::write_whole(folder / name, bytes);
        ++written;
    };
    std::vector<render::DrawingList> pages;
    for (const scenes::Drawing& d : drawings) {
        write(d.file + ".svg", render::svg_bytes_in_mm(d.sheet.list));
        write(d.file + ".pdf", render::pdf_bytes_in_mm({d.sheet.list}));
        if (kinds == DrawingKinds::paper_and_dxf) write(d.file + ".dxf", scenes::dxf_text(d.dxf));
        pages.push_back(d.sheet.list);
    }
    write("drawings.pdf", render::pdf_bytes_in_mm(pages));
    return written;
}

}  // namespace overbend::program
