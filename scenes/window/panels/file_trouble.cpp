#include "scenes/window/panels/file_trouble.h"

#include <filesystem>
#include <fstream>

#include "scenes/files/case/read_case.h"
#include "sim/words.h"

namespace overbend::window {

namespace {

constexpr std::size_t longest_text = 200;  // bytes

// Without what stands around it; letters that a screen does not show as dots.
std::string readable(std::string text) {
    const char* const blank = " \t\r";
    const std::size_t first = text.find_first_not_of(blank);
    if (first == std::string::npos) return "";
    text = text.substr(first, text.find_last_not_of(blank) - first + 1);
    for (char& letter : text)
        if (static_cast<unsigned char>(letter) < 0x20 || letter == 0x7f) letter = '.';
    if (text.size() <= longest_text) return text;
    std::size_t end = longest_text;
    while (end > 0 && (static_cast<unsigned char>(text[end]) & 0xc0) == 0x80) --end;
    return text.substr(0, end) + " ...";
}

std::string line_of(const std::string& file, int line) {
    std::ifstream stream(file);
    std::string text;
    for (int i = 0; i < line; ++i)
        if (!std::getline(stream, text)) return "";
    return line > 0 ? readable(text) : "";
}

}  // namespace

std::string FileTrouble::place_words() const {
    std::string place = std::filesystem::path(file).filename().string();
    if (line > 0) place += words(", line %d", line);
    return key.empty() ? place : place + ", " + key;
}

FileTrouble trouble_of(const files::CaseError& error) {
    return {error.file, error.line, error.key, error.wrong, error.right, line_of(error.file, error.line)};
}

ReadForWindow read_for_window(const std::filesystem::path& file) {
    ReadForWindow read;
    try {
        read.c = files::read_case(file);
    } catch (const files::CaseError& error) {
        read.trouble = trouble_of(error);
    } catch (const std::exception& error) {
        read.trouble = FileTrouble{file.string(), 0, "", error.what(), "", ""};
    }
    return read;
}

}  // namespace overbend::window
