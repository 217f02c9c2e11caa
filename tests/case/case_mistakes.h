// What is said of the mistakes in a file.

#pragma once

#include <filesystem>
#include <functional>
#include <optional>
#include <string>

#include "scenes/files/case/case.h"
#include "scenes/files/case/case_error.h"
#include "tests/files/own_folder.h"

namespace overbend::tests {

// A reader of a file: read_case, read_card as it reads a path, or read_case of a case beside the file, whose
// rack it is.
using Reader = std::function<void(const std::filesystem::path&)>;
void as_case(const std::filesystem::path& file);
void as_drawn_case(const std::filesystem::path& file);  // block.dxf is put beside it, closed, its axis words
void as_card(const std::filesystem::path& file);
void as_rack(const std::filesystem::path& file);
void as_steel(const std::filesystem::path& file);  // of a tool
void as_press(const std::filesystem::path& file);  // a card

// 10 mm square with one round corner, on the layer CONTOUR, 0.015 mm open; and a line on the layer AXIS.
extern const std::string block_drawing;

// What the reader says of a file with this text; nothing when it has no objection. Checks what holds for
// every mistake: the file's name, a remedy, one line of message.
std::optional<files::CaseError> mistake_in(const std::string& text, const Reader& read);

// The case that stands in a text.
files::Case case_of(const std::string& text);

}  // namespace overbend::tests
