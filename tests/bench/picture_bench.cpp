// Pictures and films of the demo at 1920 x 1080. The words that are the same from picture to picture are
// kept, as in a film. What is slowest bounds a film.

#include <filesystem>
#include <vector>

#include "render/film/film_file.h"
#include "render/film/paint_in_order.h"
#include "render/film/yuv.h"
#include "render/picture/painter.h"
#include "render/picture/stage.h"
#include "scenes/documents/report/shown_job.h"
#include "tests/bench/counters.h"

namespace overbend::bench {

namespace {

constexpr picture::PictureSize size{1920, 1080};

struct Stage {
    const stroke::Recording* recording = nullptr;
    picture::StageInfo info;
    picture::View view;
};

// Of every stroke.
std::vector<Stage> stages(const files::Case& c, const job::JobResult& job, picture::Lens lens) {
    std::vector<Stage> all;
    for (std::size_t i = 0; i < job.steps.size(); ++i) {
        Stage s;
        s.recording = &job.steps[i].stroke.recording;
        s.info.strip_width = c.width;
        s.info.lens = lens;
        for (const int b : c.steps[i].bends)
            s.info.bends.push_back({c.part.bends[b].name, job.blank.bend_line[b], 0.0, {}, {}, 0.0});
        s.view = picture::choose_view(*s.recording, size, s.info);
        all.push_back(s);
    }
    return all;
}

// A picture after the other: as a list, its pixels, its PNG file.
void stage_picture(benchmark::State& state, picture::Lens lens, bool pixels, bool png) {
    const files::Case c = demo();
    const job::JobResult job = job::run_process(c, {});
    const std::vector<Stage> all = stages(c, job, lens);
    picture::Pixels painted;
    std::size_t stroke = 0;
    double at = 0.0;
    for (auto _ : state) {
        const Stage& s = all[stroke];
        const picture::DrawingList list = draw_stage(*s.recording, at, s.info, size, s.view);
        if (pixels) picture::paint(list, painted);
        if (png) benchmark::DoNotOptimize(picture::png_bytes(painted));
        at += 3.7;
        if (at < static_cast<double>(s.recording->states.size()) - 1.0) continue;
        at = 0.0;
        stroke = (stroke + 1) % all.size();
    }
    state.counters["pictures/s"] = benchmark::Counter(1, benchmark::Counter::kIsIterationInvariantRate);
}
BENCHMARK_CAPTURE(stage_picture, list, picture::Lens::hidden, false, false)->Unit(benchmark::kMillisecond);
BENCHMARK_CAPTURE(stage_picture, pixels, picture::Lens::hidden, true, false)->Unit(benchmark::kMillisecond);
BENCHMARK_CAPTURE(stage_picture, png, picture::Lens::hidden, true, true)->Unit(benchmark::kMillisecond);
BENCHMARK_CAPTURE(stage_picture, list_with_magnifier, picture::Lens::shown, false, false)
    ->Unit(benchmark::kMillisecond);
BENCHMARK_CAPTURE(stage_picture, pixels_with_magnifier, picture::Lens::shown, true, false)
    ->Unit(benchmark::kMillisecond);

struct Film {
    files::Case c = demo();
    job::JobResult result = job::run_process(c, {});
    picture::ShownJob job = documents::shown_job(c, result);
    film::FilmOptions options;
    Film() { options.size = size, options.lens = picture::Lens::shown; }
};

// Every eleventh of its pictures on one core, with its pixels changed to yuv420p.
void film_frame(benchmark::State& state) {
    const Film film;
    const film::FrameList list = film::timeline(film.job, film.options);
    const std::vector<film::Shot> shots = film::shots_of(list);
    picture::Pixels pixels;
    std::vector<std::uint8_t> yuv;
    std::size_t i = 0;
    for (auto _ : state) {
        picture::paint(film::draw_frame(film.job, film.options, list, shots[i % shots.size()].instant),
                       pixels);
        film::to_yuv420p(pixels, yuv);
        i += 11;
    }
    state.counters["shots"] = static_cast<double>(shots.size());
    state.counters["frames/s"] = benchmark::Counter(1, benchmark::Counter::kIsIterationInvariantRate);
}
BENCHMARK(film_frame)->Unit(benchmark::kMillisecond);

// Painted on all cores, and encoded.
void film_mp4(benchmark::State& state) {
    const Film film;
    const std::filesystem::path file = std::filesystem::temp_directory_path() / "overbend_bench.mp4";
    film::WrittenFilm written;
    for (auto _ : state) written = film::write_mp4(film.job, film.options, file, 0);
    std::filesystem::remove(file);
    state.counters["MB"] = static_cast<double>(written.bytes) / 1e6;
    state.counters["frames/s"] =
        benchmark::Counter(written.frames, benchmark::Counter::kIsIterationInvariantRate);
}
BENCHMARK(film_mp4)->Unit(benchmark::kSecond)->UseRealTime()->Iterations(1);

}  // namespace

}  // namespace overbend::bench
