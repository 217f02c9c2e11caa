#include "render/film/frames.h"

#include <algorithm>
#include <array>
#include <cstdio>
#include <memory>

#include "render/film/paint_in_order.h"
#include "render/output/part_folder.h"
#include "render/output/whole_file.h"
#include "render/picture/painter.h"

namespace overbend::film {

namespace {

namespace fs = std::filesystem;

// One picture and all the files that it goes to.
struct Task {
    Shot shot;
    std::vector<fs::path> files;
};

std::string numbered(const char* form, int number) {
    std::array<char, 32> name{};
    std::snprintf(name.data(), name.size(), form, number);
    return name.data();
}

bool is_frame_name(const std::string& name) {
    return name.size() == 15 && name.compare(0, 6, "frame_") == 0 && name.compare(11, 4, ".png") == 0 &&
           std::all_of(name.begin() + 6, name.begin() + 11, [](char c) { return c >= '0' && c <= '9'; });
}

void make_folder(const fs::path& folder) {
    std::error_code error;
    fs::create_directories(folder, error);
    if (error) throw std::runtime_error("cannot create folder: " + folder.string() + ": " + error.message());
}

std::vector<Sequence> sequences_of(const ShownJob& job, const fs::path& out_dir, Sequences which) {
    std::vector<Sequence> sequences;
    if (which != Sequences::strokes) sequences.push_back({out_dir / "job", "", 0});
    if (which == Sequences::job) return sequences;
    for (size_t i = 0; i < job.strokes.size(); ++i)
        sequences.push_back(
            {out_dir / numbered("stroke_%02d", number_of(job, static_cast<int>(i))), job.strokes[i].name, 0});
    return sequences;
}

// One for each sequence.
using Folders = std::vector<std::unique_ptr<output::PartFolder>>;

Folders fresh_folders(const std::vector<Sequence>& sequences) {
    Folders folders;
    for (const Sequence& sequence : sequences)
        folders.push_back(std::make_unique<output::PartFolder>(sequence.folder));
    return folders;
}

// The frames of a stroke are those of the job between two carries: painted once, written to both. So are
// frames in which nothing moves.
std::vector<Task> tasks_of(const FrameList& list, Sequences which, std::vector<Sequence>& sequences,
                           const Folders& folders) {
    const auto next_file = [&](std::size_t sequence) {
        return folders[sequence]->place() / numbered("frame_%05d.png", ++sequences[sequence].frames);
    };
    const std::size_t first_stroke = which == Sequences::job_and_strokes ? 1 : 0;
    std::vector<Task> tasks;
    for (int i = 0; i < static_cast<int>(list.instants.size()); ++i) {
        const Instant& instant = list.instants[i];
        std::vector<fs::path> files;
        if (which != Sequences::strokes) files.push_back(next_file(0));
        if (which != Sequences::job && in_a_stroke(instant.passage))
            files.push_back(next_file(first_stroke + static_cast<std::size_t>(instant.stroke)));
        if (files.empty()) continue;
        if (!tasks.empty() && look_the_same(list.instants[tasks.back().shot.instant], instant)) {
            ++tasks.back().shot.frames;
            tasks.back().files.insert(tasks.back().files.end(), files.begin(), files.end());
        } else {
            tasks.push_back({{i, 1}, std::move(files)});
        }
    }
    return tasks;
}

// What progress said no to.
struct GivenUp {};

}  // namespace

PaintedFilm paint_frames(const ShownJob& job, const FilmOptions& options, const fs::path& out_dir,
                         const PaintOptions& paint, const Progress& progress) {
    const FrameList list = timeline(job, options);
    PaintedFilm film;
    film.frames_per_second = list.frames_per_second;
    film.sequences = sequences_of(job, out_dir, paint.sequences);
    painters_for(paint.threads, list.instants.size());  // refuses before anything is made
    make_folder(out_dir);
    const Folders folders = fresh_folders(film.sequences);
    const std::vector<Task> tasks = tasks_of(list, paint.sequences, film.sequences, folders);
    std::vector<Shot> shots;
    for (const Task& task : tasks) shots.push_back(task.shot);
    film.wanted = frames_in(shots);
    const auto tell = [&] {
        if (progress && !progress(film.painted, film.wanted)) throw GivenUp();
    };
    auto task = tasks.begin();
    try {
        tell();
        paint_in_order(job, options, list, shots, FrameBytes::png, paint.threads,
                       [&](const std::vector<std::uint8_t>& bytes, const Shot& shot) {
                           const std::string png(bytes.begin(), bytes.end());
                           for (const fs::path& file : (task++)->files) output::write_whole(file, png);
                           film.painted += shot.frames;
                           tell();
                       });
        for (const auto& folder : folders) folder->give_name(is_frame_name);
    } catch (const GivenUp&) {
        // Half a film would pass for a whole one.
    }
    return film;
}

}  // namespace overbend::film
