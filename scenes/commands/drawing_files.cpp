#include "scenes/commands/drawing_files.h"

#include "render/output/whole_file.h"
#include "render/picture/painter.h"
#include "scenes/files/dxf/write_dxf.h"

namespace overbend::commands {

int write_drawings(const std::vector<documents::Drawing>& drawings, const std::filesystem::path& folder,
                   DrawingKinds kinds) {
    int written = 0;
    const auto write = [&](const std::string& name, const std::string& bytes) {
        output::write_whole(folder / name, bytes);
        ++written;
    };
    std::vector<picture::DrawingList> pages;
    for (const documents::Drawing& d : drawings) {
        write(d.file + ".svg", picture::svg_bytes_in_mm(d.sheet.list));
        write(d.file + ".pdf", picture::pdf_bytes_in_mm({d.sheet.list}));
        if (kinds == DrawingKinds::paper_and_dxf) write(d.file + ".dxf", files::dxf_text(d.dxf));
        pages.push_back(d.sheet.list);
    }
    write("drawings.pdf", picture::pdf_bytes_in_mm(pages));
    return written;
}

}  // namespace overbend::commands
