#include "scenes/files/case/read_outline_file.h"

#include <cmath>
#include <utility>

#include "scenes/files/case/case_error.h"
#include "scenes/files/case/named_asset.h"
#include "scenes/files/case/strict_table.h"
#include "scenes/files/dxf/chain.h"

namespace overbend::files {

namespace {

// A missing drawing is reported as a mistake in the case.
std::string open(const StrictTable& table, const OutlineFile& file) {
    try {
        return read_dxf_text(file.path);
    } catch (const DxfError& error) {
        table.complain("file", error.wrong + " (" + file.path + ")", error.right);
    }
}

std::vector<tool::Piece> placed(std::vector<tool::Piece> pieces, const OutlineFile& file) {
    const double c = std::cos(file.turn), s = std::sin(file.turn);
    const auto place = [&](tool::Vec2& at) {
        const tool::Vec2 from = at - file.origin;
        at = file.turn == 0.0 ? from : tool::Vec2(c * from.x() - s * from.y(), s * from.x() + c * from.y());
    };
    for (tool::Piece& piece : pieces) place(piece.start), place(piece.end), place(piece.centre);
    return pieces;
}

}  // namespace

OutlineTool read_outline_file(const StrictTable& table, OutlineFile file,
                              const std::filesystem::path& beside) {
    file.path = path_from_anywhere(beside / file.path);
    const std::string text = open(table, file);
    try {
        std::vector<tool::Piece> pieces = placed(chained(read_dxf(text, file.layer), file.gap), file);
        return {tool::ArcOutline(std::move(pieces)), {}, file};
    } catch (const DxfError& error) {
        throw CaseError(file.path, error.line, error.line > 0 ? 1 : 0, "", error.wrong, error.right);
    }
}

}  // namespace overbend::files
