// What is asked about files, in a bar over the whole width: one that was changed on disk is offered to be
// read again, and what is wrong with it is shown with its line; unsaved changes are not lost unasked.

#pragma once

#include <optional>

#include "render/ui/ui.h"
#include "scenes/window/panels/watched_file.h"

namespace overbend::window {

// Nothing as long as there are no news. Over the whole width; returns the case on disk when it is asked for.
std::optional<files::Case> draw_reload_bar(ui::Ui& ui, WatchedFile& watched);

// Something that would lose what was changed in the case and is in no file yet: what the user says to it,
// when he does. proceed, stay, save: the words of the buttons; without words there is none to save.
enum class UnsavedAnswer { proceed, stay, save };
std::optional<UnsavedAnswer> draw_unsaved(ui::Ui& ui, const std::string& words, const std::string& proceed,
                                          const std::string& stay, const ui::Key& key,
                                          const std::string& save = "");

// What is wrong with a file that was to be opened; true when it has been read.
bool draw_not_opened(ui::Ui& ui, const FileTrouble& trouble);

}  // namespace overbend::window
