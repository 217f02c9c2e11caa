#include "render/film/frames.h"

#include <algorithm>
#include <array>
#include <cstdio>

#include "render/film/paint_in_order.h"
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

void remove_frames(const fs::path& folder) {
    std::vector<fs::path> frames;
    std::error_code ignored;
    for (const fs::directory_entry& entry : fs::directory_iterator(folder, ignored))
        if (is_frame_name(entry.path().filename().string())) frames.push_back(entry.path());
    for (const fs::path& path : frames) fs::remove(path, ignored);
}

// After a film that was not finished; a folder in which something else stands stays.
void remove_half(const std::vector<Sequence>& sequences) {
    std::error_code ignored;
    for (const Sequence& sequence : sequences) {
        remove_frames(sequence.folder);
        fs::remove(sequence.folder, ignored);
    }
}

void make_empty(const fs::path& folder) {
    std::error_code error;
    fs::create_directories(folder, error);
    if (error) throw std::runtime_error("cannot create folder: " + folder.string() + ": " + error.message());
    remove_frames(folder);
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

// The frames of a stroke are those of the job between two carries: painted once, written to both. So are
// frames in which nothing moves.
std::vector<Task> tasks_of(const FrameList& list, Sequences which, std::vector<Sequence>& sequences) {
    const auto next_file = [](Sequence& sequence) {
        return sequence.folder / numbered("frame_%05d.png", ++sequence.frames);
    };
    const int first_stroke = which == Sequences::job_and_strokes ? 1 : 0;
    std::vector<Task> tasks;
    for (int i = 0; i < static_cast<int>(list.instants.size()); ++i) {
        const Instant& instant = list.instants[i];
        std::vector<fs::path> files;
        if (which != Sequences::strokes) files.push_back(next_file(sequences[0]));
        if (which != Sequences::job && in_a_stroke(instant.passage))
            files.push_back(next_file(sequences[first_stroke + instant.stroke]));
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
    const std::vector<Task> tasks = tasks_of(list, paint.sequences, film.sequences);
    std::vector<Shot> shots;
    for (const Task& task : tasks) shots.push_back(task.shot);
    film.wanted = frames_in(shots);
    painters_for(paint.threads, shots.size());  // refuses before anything is removed
    for (const Sequence& sequence : film.sequences) make_empty(sequence.folder);
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
    } catch (const GivenUp&) {
        // Half a film would pass for a whole one.
        if (!film.complete()) remove_half(film.sequences);
    } catch (...) {
        remove_half(film.sequences);
        throw;
    }
    return film;
}

}  // namespace overbend::film
