// A film as PNG files: the whole job's frames, and each stroke's by itself.
//
// Frames are painted on all cores, each by itself from the same data: the files are the same whatever the
// number of threads. No display is needed. Every file is whole or absent.

#pragma once

#include <filesystem>
#include <functional>
#include <string>
#include <vector>

#include "render/film/timeline.h"

namespace overbend::film {

enum class Sequences { job_and_strokes, job, strokes };

struct PaintOptions {
    int threads = 0;  // 0: one a core; at most 256
    Sequences sequences = Sequences::job_and_strokes;
};

// One folder of frames, named frame_00001.png and on.
struct Sequence {
    std::filesystem::path folder;
    std::string step_name;  // empty for the whole job
    int frames = 0;
};

struct PaintedFilm {
    double frames_per_second = 30.0;
    int painted = 0;  // frames, of all that were to be painted
    int wanted = 0;
    std::vector<Sequence> sequences;
    bool complete() const { return painted == wanted; }
};

// Called in the caller's thread, now and then; false stops the painting after the frames in hand.
using Progress = std::function<bool(int painted, int wanted)>;

// Writes out_dir/job/frame_00001.png, ... and out_dir/stroke_01/frame_00001.png, ... They are painted into
// fresh folders, which take these names when all frames are there; until then those of an earlier film stay,
// and for good when painting is stopped or fails. Then they are gone (files named so, nothing else).
//
// Throws OutOfRange: see timeline; threads. std::runtime_error: a file or folder cannot be written.
PaintedFilm paint_frames(const ShownJob& job, const FilmOptions& options,
                         const std::filesystem::path& out_dir, const PaintOptions& paint = {},
                         const Progress& progress = {});

}  // namespace overbend::film
