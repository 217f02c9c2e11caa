#include "scenes/files/case/case_error.h"

#include <utility>

namespace overbend::files {

namespace {

std::string message(const std::string& file, int line, const std::string& key, const std::string& wrong,
                    const std::string& right) {
    std::string text = file + ":";
    if (line > 0) text += std::to_string(line) + ":";
    if (!key.empty()) text += " " + key + ":";
    text += " " + wrong + "; " + right;
    // A key or a text quoted from the file may hold anything; the message is one line.
    for (char& c : text) {
        if (static_cast<unsigned char>(c) < 0x20 || c == 0x7f) c = '.';
    }
    return text;
}

}  // namespace

CaseError::CaseError(std::string file_, int line_, int column_, std::string key_, std::string wrong_,
                     std::string right_)
    : std::runtime_error(message(file_, line_, key_, wrong_, right_)),
      file(std::move(file_)),
      line(line_),
      column(column_),
      key(std::move(key_)),
      wrong(std::move(wrong_)),
      right(std::move(right_)) {}

}  // namespace overbend::files
