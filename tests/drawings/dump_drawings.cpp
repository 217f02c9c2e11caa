// Random tools of every kind, as DXF files in a folder, with a JSON file beside each that says what they are
// made of: for compare_dxf.py. dump_drawings FOLDER

#include <cstdio>
#include <filesystem>
#include <fstream>
#include <string>

#include "scenes/documents/drawings/blank_sheet.h"
#include "scenes/documents/drawings/dxf_drawings.h"
#include "scenes/documents/drawings/part_sheet.h"
#include "scenes/files/case/read_case.h"
#include "scenes/files/case/tool_outline.h"
#include "scenes/files/dxf/write_dxf.h"
#include "tests/files/random_tool.h"

using namespace overbend;

namespace {

void write(const std::filesystem::path& file, const std::string& text) {
    std::ofstream(file, std::ios::binary) << text;
}

std::string pieces_json(const std::vector<tool::Piece>& pieces) {
    std::string text;
    char entry[400];
    for (const tool::Piece& p : pieces) {
        std::snprintf(entry, sizeof entry,
                      "%s{\"start\": [%.17g, %.17g], \"end\": [%.17g, %.17g], \"centre\": [%.17g, %.17g], "
                      "\"radius\": %.17g, \"sweep\": %.17g}",
                      text.empty() ? "" : ",\n", p.start.x(), p.start.y(), p.end.x(), p.end.y(), p.centre.x(),
                      p.centre.y(), p.radius, p.sweep);
        text += entry;
    }
    return "[" + text + "]\n";
}

}  // namespace

int main(int count, char** arguments) {
    if (count != 2) return 2;
    const std::filesystem::path folder = arguments[1];
    std::mt19937 random(314);
    for (int kind = 0; kind < tests::tool_kinds; ++kind) {
        for (int i = 0; i < 5; ++i) {
            const std::string name = "tool-" + std::to_string(kind) + "-" + std::to_string(i);
            const files::Tool tool = tests::random_tool(kind, random);
            write(folder / (name + ".dxf"), files::dxf_text(documents::tool_dxf(tool)));
            write(folder / (name + ".json"), pieces_json(files::tool_outline(tool, 1).pieces()));
        }
    }
    const files::Case c = files::read_case("cases/cable-hook/case.toml");
    write(folder / "part.dxf", files::dxf_text(documents::part_dxf(c)));
    write(folder / "part.json", pieces_json(documents::part_outline(c)));
    const job::Blank blank = job::make_blank(c);
    write(folder / "blank.dxf", files::dxf_text(documents::blank_dxf(c, blank)));
    write(folder / "blank.json", pieces_json(documents::blank_outlines(c, blank).front()));
}
