#include "scenes/files/case/read_outline_file.h"

#include <cmath>
#include <utility>

#include "scenes/files/case/case_error.h"
#include "scenes/files/case/named_asset.h"
#include "scenes/files/case/strict_table.h"
#include "scenes/files/dxf/chain.h"

namespace overbend::files {

namespace {

OutlineFile read_keys(const StrictTable& table, const std::filesystem::path& beside) {
    OutlineFile file;
    if (table.has("points"))
        table.complain("file", "the outline has points and a file", "give points or a file");
    file.path = path_from_anywhere(beside / table.text("file"));
    file.layer = table.text_or("layer", "");
    file.gap = table.number_or("gap_mm", usual_gap, from_to(0.0, 1.0));
    if (table.has("origin_mm")) {
        const std::vector<double> origin =
            table.numbers("origin_mm", from_to(-largest_coordinate, largest_coordinate));
        if (origin.size() != 2)
            table.complain("origin_mm", std::to_string(origin.size()) + " numbers are given", "give x and y");
        file.origin = {origin[0], origin[1]};
    }
    file.turn = table.angle_or("turn_deg", 0.0, from_to(-360.0, 360.0));
    return file;
}

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

OutlineTool read_outline_file(const StrictTable& table, const std::filesystem::path& beside) {
    const OutlineFile file = read_keys(table, beside);
    const std::string text = open(table, file);
    try {
        std::vector<tool::Piece> pieces = placed(chained(read_dxf(text, file.layer), file.gap), file);
        return {tool::ArcOutline(std::move(pieces)), {}, file};
    } catch (const DxfError& error) {
        throw CaseError(file.path, error.line, error.line > 0 ? 1 : 0, "", error.wrong, error.right);
    }
}

}  // namespace overbend::files
