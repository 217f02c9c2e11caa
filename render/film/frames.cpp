#include "render/film/frames.h"

#include <algorithm>
#include <array>
#include <condition_variable>
#include <cstdio>
#include <exception>
#include <mutex>
#include <thread>

#include "render/film/paint_in_order.h"
#include "render/output/whole_file.h"
#include "render/picture/painter.h"
#include "sim/errors.h"

namespace overbend::film {

namespace {

namespace fs = std::filesystem;

// One picture and all the files that it goes to.
struct Task {
    int instant = 0;
    int frames = 1;  // of the film's instants that look the same, one after the other
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

std::vector<Sequence> sequences_of(const FilmJob& job, const fs::path& out_dir, Sequences which) {
    std::vector<Sequence> sequences;
    if (which != Sequences::strokes) sequences.push_back({out_dir / "job", "", 0});
    if (which == Sequences::job) return sequences;
    for (size_t i = 0; i < job.strokes.size(); ++i)
        sequences.push_back({out_dir / numbered("stroke_%02d", number_of(job, static_cast<int>(i))),
                             job.strokes[i].step_name, 0});
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
        if (!tasks.empty() && look_the_same(list.instants[tasks.back().instant], instant)) {
            ++tasks.back().frames;
            tasks.back().files.insert(tasks.back().files.end(), files.begin(), files.end());
        } else {
            tasks.push_back({i, 1, std::move(files)});
        }
    }
    return tasks;
}

int frames_in(const std::vector<Task>& tasks) {
    int frames = 0;
    for (const Task& task : tasks) frames += task.frames;
    return frames;
}

// What the workers share. Each takes the next task until there are none, or until one has failed.
class Workshop {
  public:
    Workshop(const FilmJob& job, const FilmOptions& options, const FrameList& list,
             const std::vector<Task>& tasks)
        : job_(job), options_(options), list_(list), tasks_(tasks) {}

    // Returns the count of painted frames; throws what a worker threw.
    int run(int threads, const Progress& progress) {
        std::vector<std::thread> workers;
        working_ = threads;
        try {
            for (int i = 0; i < threads; ++i) workers.emplace_back([this] { work(); });
            watch(progress);
        } catch (...) {
            stop(std::current_exception());
        }
        for (std::thread& worker : workers) worker.join();
        if (failure_) std::rethrow_exception(failure_);
        return painted_;
    }

  private:
    void work() {
        picture::Pixels pixels;  // kept from frame to frame: allocating them costs as much as painting
        try {
            for (int task = take(); task >= 0; task = take()) {
                paint_task(tasks_[task], pixels);
                finished(tasks_[task].frames);
            }
        } catch (...) {
            stop(std::current_exception());
        }
        const std::lock_guard<std::mutex> lock(mutex_);
        --working_;
        changed_.notify_all();
    }

    void paint_task(const Task& task, picture::Pixels& pixels) {
        picture::paint(draw_frame(job_, options_, list_, task.instant), pixels);
        const std::string bytes = picture::png_bytes(pixels);
        for (const fs::path& file : task.files) output::write_whole(file, bytes);
    }

    int take() {
        const std::lock_guard<std::mutex> lock(mutex_);
        if (stopped_ || next_ >= static_cast<int>(tasks_.size())) return -1;
        return next_++;
    }

    void finished(int frames) {
        const std::lock_guard<std::mutex> lock(mutex_);
        painted_ += frames;
        changed_.notify_all();
    }

    void stop(const std::exception_ptr& why) {
        const std::lock_guard<std::mutex> lock(mutex_);
        stopped_ = true;
        if (why && !failure_) failure_ = why;
        changed_.notify_all();
    }

    // Reports progress, in the caller's own thread.
    void watch(const Progress& progress) {
        std::unique_lock<std::mutex> lock(mutex_);
        int told = -1;
        while (working_ > 0) {
            changed_.wait(lock, [&] { return working_ == 0 || painted_ != told; });
            told = painted_;
            if (!progress) continue;
            lock.unlock();
            const bool keep_going = progress(told, frames_in(tasks_));
            lock.lock();
            if (!keep_going) stopped_ = true;
        }
    }

    const FilmJob& job_;
    const FilmOptions& options_;
    const FrameList& list_;
    const std::vector<Task>& tasks_;
    std::mutex mutex_;
    std::condition_variable changed_;
    int next_ = 0;
    int painted_ = 0;
    int working_ = 0;
    bool stopped_ = false;
    std::exception_ptr failure_;
};

}  // namespace

PaintedFilm paint_frames(const FilmJob& job, const FilmOptions& options, const fs::path& out_dir,
                         const PaintOptions& paint, const Progress& progress) {
    const FrameList list = timeline(job, options);
    PaintedFilm film;
    film.frames_per_second = list.frames_per_second;
    film.sequences = sequences_of(job, out_dir, paint.sequences);
    const std::vector<Task> tasks = tasks_of(list, paint.sequences, film.sequences);
    const int threads = painters_for(paint.threads, tasks.size());
    for (const Sequence& sequence : film.sequences) make_empty(sequence.folder);
    film.wanted = frames_in(tasks);
    try {
        film.painted = Workshop(job, options, list, tasks).run(threads, progress);
    } catch (...) {
        remove_half(film.sequences);
        throw;
    }
    // Half a film would pass for a whole one.
    if (!film.complete()) remove_half(film.sequences);
    return film;
}

}  // namespace overbend::film
