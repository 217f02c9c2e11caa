#include "tests/case/case_mistakes.h"

#include <doctest/doctest.h>

#include <fstream>

#include "scenes/files/case/read_card.h"
#include "scenes/files/case/read_case.h"
#include "scenes/files/case/read_shop.h"

namespace overbend::tests {

namespace fs = std::filesystem;

const std::string block_drawing =
    "0\nSECTION\n2\nENTITIES\n"
    "0\nLINE\n8\nCONTOUR\n10\n0\n20\n0\n11\n10\n21\n0\n"
    "0\nLINE\n8\nCONTOUR\n10\n10\n20\n0\n11\n10\n21\n8\n"
    "0\nARC\n8\nCONTOUR\n10\n8\n20\n8\n40\n2\n50\n0\n51\n90\n"
    "0\nLINE\n8\nCONTOUR\n10\n0\n20\n10\n11\n8\n21\n10\n"
    "0\nLINE\n8\nCONTOUR\n10\n0\n20\n10\n11\n0\n21\n0.015\n"
    "0\nLINE\n8\nAXIS\n10\n5\n20\n-3\n11\n5\n21\n13\n"
    "0\nENDSEC\n0\nEOF\n";

void as_case(const fs::path& file) {
    files::read_case(file);
}
void as_drawn_case(const fs::path& file) {
    std::ofstream(file.parent_path() / "block.dxf")
        << replaced(replaced(block_drawing, "0.015", "0"), "0\nLINE\n8\nAXIS", "0\nTEXT\n8\nAXIS");
    files::read_case(file);
}
void as_card(const fs::path& file) {
    files::read_card(file.string(), "");
}
void as_steel(const fs::path& file) {
    files::read_tool_steel(file.string(), "");
}
void as_press(const fs::path& file) {
    files::read_press_card(file.string(), "");
}
void as_rack(const fs::path& file) {
    const fs::path job = file.parent_path() / "job.toml";
    std::ofstream(job)
        << "format = 1\ntitle = \"Drawing\"\nrack = " << file.filename()
        << "\n[strip]\nmaterial = \"dc01\"\nthickness_mm = 1\nwidth_mm = 20\n"
           "[part]\npath = [ { flat_mm = 9 }, { bend_deg = 90, inside_radius_mm = 1 }, { flat_mm "
           "= 9 } ]\n";
    files::read_case(job, files::Needs::drawing_alone);
}

std::optional<files::CaseError> mistake_in(const std::string& text, const Reader& read) {
    const OwnFolder folder;
    const fs::path file = folder.write("case.toml", text);
    try {
        read(file);
    } catch (const files::CaseError& error) {
        CAPTURE(std::string(error.what()));
        const std::string said = error.what();
        CHECK(error.file == file.string());
        CHECK(error.line > 0);
        CHECK(error.column > 0);
        CHECK_FALSE(error.wrong.empty());
        CHECK_FALSE(error.right.empty());
        CHECK(said.rfind(file.string() + ":" + std::to_string(error.line) + ":", 0) == 0);
        CHECK(said.find('\n') == std::string::npos);
        return error;
    }
    return std::nullopt;
}

files::Case case_of(const std::string& text) {
    const OwnFolder folder;
    return files::read_case(folder.write("case.toml", text));
}

}  // namespace overbend::tests
