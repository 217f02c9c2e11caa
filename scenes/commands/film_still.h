// Stills of a film: which instant is meant, and its picture as files.

#pragma once

#include <filesystem>
#include <optional>
#include <string>
#include <vector>

#include "render/film/timeline.h"
#include "scenes/files/case/case.h"

namespace overbend::commands {

// "lip:free", "2:dwell", or seconds from the film's beginning, "12.5".
struct StillWanted {
    std::string words;             // as it was given
    std::optional<double> second;  // else:
    int step = 0;                  // index into the case's steps
    film::Passage passage = film::Passage::free;
};

// Throws WrongUsage naming --still, with what would be right.
StillWanted read_still(const files::Case& c, const std::string& words);

// The frame that shows it: of placed, dwell and free the last one, of what moves the middle one.
// Throws WrongUsage: beyond the film's end; a stroke or passage that is not in it.
int frame_of(const StillWanted& still, const picture::ShownJob& job, const film::FrameList& frames);

// Writes DIR/still_... in each form ("svg", "pdf", "png"); the files. Throws as the painter.
std::vector<std::filesystem::path> write_still(const picture::DrawingList& list, const StillWanted& still,
                                               const std::filesystem::path& folder,
                                               const std::vector<std::string>& forms);

}  // namespace overbend::commands
