// What a film costs: the demo at 1920 x 1080, frame by frame - drawn as a list, painted, changed to yuv420p -
// and the whole of it painted on all cores and encoded. What is slowest bounds it.

#include <sys/resource.h>
#include <time.h>

#include <algorithm>
#include <chrono>
#include <cstdio>
#include <filesystem>
#include <thread>
#include <vector>

#include "render/film/film_file.h"
#include "render/film/paint_in_order.h"
#include "render/film/yuv.h"
#include "scenes/documents/report/shown_job.h"
#include "scenes/files/case/read_case.h"
#include "scenes/job/run/process.h"

using namespace overbend;
using Clock = std::chrono::steady_clock;

namespace {

// Of this thread, s.
double thread_seconds() {
    timespec t{};
    ::clock_gettime(CLOCK_THREAD_CPUTIME_ID, &t);
    return static_cast<double>(t.tv_sec) + 1e-9 * static_cast<double>(t.tv_nsec);
}

// Of this process with all its threads, or of children that have ended, s.
double processor_seconds(int who) {
    rusage used{};
    ::getrusage(who, &used);
    const auto seconds = [](const timeval& t) {
        return static_cast<double>(t.tv_sec) + 1e-6 * static_cast<double>(t.tv_usec);
    };
    return seconds(used.ru_utime) + seconds(used.ru_stime);
}

double seconds_since(Clock::time_point begin) {
    return std::chrono::duration<double>(Clock::now() - begin).count();
}

// On one core, every so many of the film's pictures.
void time_parts(const picture::ShownJob& job, const film::FilmOptions& options) {
    const auto begin = Clock::now();
    const film::FrameList list = film::timeline(job, options);
    std::printf("timeline: %.0f ms\n", 1e3 * seconds_since(begin));
    const std::vector<film::Shot> shots = film::shots_of(list);
    std::printf("%d frames, %zu of them look different\n", film::frames_in(shots), shots.size());
    double drawing = 0.0, painting = 0.0, changing = 0.0;
    int count = 0;
    picture::Pixels pixels;
    std::vector<std::uint8_t> yuv;
    for (std::size_t i = 0; i < shots.size(); i += 11, ++count) {
        const double start = thread_seconds();
        const picture::DrawingList drawn = film::draw_frame(job, options, list, shots[i].instant);
        const double is_drawn = thread_seconds();
        picture::paint(drawn, pixels);
        const double is_painted = thread_seconds();
        film::to_yuv420p(pixels, yuv);
        drawing += 1e3 * (is_drawn - start);
        painting += 1e3 * (is_painted - is_drawn);
        changing += 1e3 * (thread_seconds() - is_painted);
    }
    std::printf("a picture on one core: drawn %.2f ms, painted %.2f ms, to yuv420p %.2f ms\n",
                drawing / count, painting / count, changing / count);
}

void time_whole(const picture::ShownJob& job, const film::FilmOptions& options,
                const std::filesystem::path& file) {
    const double own = processor_seconds(RUSAGE_SELF), encoding = processor_seconds(RUSAGE_CHILDREN);
    const auto begin = Clock::now();
    const film::WrittenFilm film = film::write_mp4(job, options, file, 0);
    const double all = seconds_since(begin);
    const unsigned cores = std::thread::hardware_concurrency();
    const double painted = processor_seconds(RUSAGE_SELF) - own;
    const double encoded = processor_seconds(RUSAGE_CHILDREN) - encoding;
    std::printf("painted and encoded on %u cores: %.1f s, %.0f frames a second, %.1f MB\n", cores, all,
                film.frames / all, static_cast<double>(film.bytes) / 1e6);
    std::printf(
        "processor time: %.1f s for painting, %.1f s for encoding; with all cores free %.0f frames a "
        "second\n",
        painted, encoded, film.frames * cores / (painted + encoded));
}

}  // namespace

int main() {
    const files::Case c = files::read_case("cases/cable-hook/case.toml");
    const job::JobResult result = job::run_process(c, {});
    if (!result.solved) return 1;
    const picture::ShownJob job = documents::shown_job(c, result);
    film::FilmOptions options;
    options.size = {1920, 1080};
    options.lens = picture::Lens::shown;
    time_parts(job, options);
    const std::filesystem::path file = std::filesystem::temp_directory_path() / "overbend_bench.mp4";
    time_whole(job, options, file);
    std::filesystem::remove(file);
    return 0;
}
