// A whole film in one file: MP4 or GIF. Frames are painted on all cores and go straight to the encoder.

#pragma once

#include <cstdint>
#include <filesystem>
#include <functional>
#include <string>

#include "render/film/timeline.h"

namespace overbend::film {

// Called in the caller's thread, now and then; false: give up, and leave nothing. what: "film", "GIF".
using FilmProgress = std::function<bool(const std::string& what, int done, int wanted)>;

struct WrittenFilm {
    std::filesystem::path file;
    picture::PictureSize size;
    double frames_per_second = 0.0;
    int frames = 0;
    std::uintmax_t bytes = 0;
    std::string made_smaller;  // what was lowered to keep to the limit, in words; empty: nothing
};

// H.264 in an MP4: yuv420p, constant rate, fast start.
//
// Throws OutOfRange: see timeline; an odd width or height; threads. NoEncoder, Interrupted,
// std::runtime_error: see encoder.h.
WrittenFilm write_mp4(const ShownJob& job, const FilmOptions& options, const std::filesystem::path& file,
                      int threads, const FilmProgress& progress = {});

// A GIF in 255 colours found from its own frames, of at most `limit` bytes: the rate is lowered, then the
// width, until it is. It never has more than 25 frames a second, nor more than 960 pixels across.
//
// Throws as write_mp4; OutOfRange: the limit cannot be kept, with what would be needed.
WrittenFilm write_gif(const ShownJob& job, const FilmOptions& options, const std::filesystem::path& file,
                      std::uintmax_t limit, int threads, const FilmProgress& progress = {});

}  // namespace overbend::film
