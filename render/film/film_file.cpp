#include "render/film/film_file.h"

#include <algorithm>
#include <cmath>

#include "render/film/encoder.h"
#include "render/film/gif_rungs.h"
#include "render/film/paint_in_order.h"
#include "render/picture/numbers.h"
#include "sim/errors.h"

namespace overbend::film {

using namespace picture;

namespace {

void check_even(const PictureSize& size) {
    if (size.width % 2 == 0 && size.height % 2 == 0) return;
    const auto even = [](int n) { return std::to_string(n + n % 2); };
    throw OutOfRange(
        "picture size", std::to_string(size.width) + " x " + std::to_string(size.height) + " px",
        "an MP4 needs an even width and height: use " + even(size.width) + " x " + even(size.height) + " px");
}

// Reports the progress of a film, and whether to go on.
class Told {
  public:
    Told(const FilmProgress& progress, std::string what, int wanted)
        : progress_(progress), what_(std::move(what)), wanted_(wanted) {}
    void done(int frames) { done_ += frames; }
    bool keep_going() const { return !progress_ || progress_(what_, done_, wanted_); }

  private:
    const FilmProgress& progress_;
    std::string what_;
    int wanted_;
    int done_ = 0;
};

// How many colours' frames are looked at: enough that no colour is missed for long, few enough to be quick.
constexpr double looks_per_second = 4.0;

GifPalette colours_of(const ShownJob& job, const FilmOptions& options, const FrameList& list, int threads,
                      const FilmProgress& progress) {
    const std::vector<Shot> all = shots_of(list);
    const int every = std::max(1, static_cast<int>(std::lround(list.frames_per_second / looks_per_second)));
    std::vector<Shot> some;
    for (std::size_t i = 0; i < all.size(); ++i)
        if (i % static_cast<std::size_t>(every) == 0 || all[i].frames > 1) some.push_back(all[i]);
    Told told(progress, "colours of the GIF", static_cast<int>(some.size()));
    const KeepGoing keep_going = [&] { return told.keep_going(); };
    Encoder encoder(Coding::gif_palette, "", options.size, list.frames_per_second);
    paint_in_order(job, options, list, some, FrameBytes::bgrx, threads,
                   [&](const std::vector<std::uint8_t>& bytes, const Shot&) {
                       encoder.take(bytes, keep_going);
                       told.done(1);
                   });
    return encoder.finish_palette(keep_going);
}

struct TooLarge {
    double expected = 0.0;  // bytes, of the whole film
};

// One try at a GIF. Throws TooLarge as soon as it is over the limit.
WrittenFilm try_gif(const ShownJob& job, const FilmOptions& options, const std::filesystem::path& file,
                    std::uintmax_t limit, int threads, const FilmProgress& progress) {
    const FrameList list = timeline(job, options);
    const std::vector<Shot> shots = shots_of(list);
    const GifPalette palette = colours_of(job, options, list, threads, progress);
    const int wanted = frames_in(shots);
    Told told(progress, "GIF", wanted);
    const KeepGoing keep_going = [&] { return told.keep_going(); };
    Encoder encoder(Coding::gif, file, options.size, list.frames_per_second, palette);
    int done = 0;
    paint_in_order(job, options, list, shots, FrameBytes::bgrx, threads,
                   [&](const std::vector<std::uint8_t>& bytes, const Shot& shot) {
                       for (int i = 0; i < shot.frames; ++i) {
                           encoder.take(bytes, keep_going);
                           told.done(1);
                       }
                       done += shot.frames;
                       const double written = static_cast<double>(encoder.bytes_written());
                       if (written > static_cast<double>(limit)) throw TooLarge{written * wanted / done};
                   });
    const std::uintmax_t bytes = encoder.finish_encoding(keep_going);
    if (bytes > limit) throw TooLarge{static_cast<double>(bytes)};
    encoder.give_name();
    return {file, options.size, list.frames_per_second, wanted, bytes, ""};
}

std::string size_words(const PictureSize& size) {
    return std::to_string(size.width) + " x " + std::to_string(size.height) + " px";
}

std::string megabytes(double bytes) {
    return fixed(bytes / 1e6, bytes < 1e6 ? 2 : 1) + " MB";
}

std::string rate_in_words(double rate) {
    return fixed(rate, rate == std::floor(rate) ? 0 : 1) + " frames a second";
}

}  // namespace

WrittenFilm write_mp4(const ShownJob& job, const FilmOptions& options, const std::filesystem::path& file,
                      int threads, const FilmProgress& progress) {
    check_even(options.size);
    const FrameList list = timeline(job, options);
    const std::vector<Shot> shots = shots_of(list);
    Told told(progress, "film", frames_in(shots));
    const KeepGoing keep_going = [&] { return told.keep_going(); };
    Encoder encoder(Coding::mp4, file, options.size, list.frames_per_second);
    paint_in_order(job, options, list, shots, FrameBytes::yuv420p, threads,
                   [&](const std::vector<std::uint8_t>& bytes, const Shot& shot) {
                       for (int i = 0; i < shot.frames; ++i) {
                           encoder.take(bytes, keep_going);
                           told.done(1);
                       }
                   });
    const std::uintmax_t bytes = encoder.finish_encoding(keep_going);
    encoder.give_name();
    return {file, options.size, list.frames_per_second, frames_in(shots), bytes, ""};
}

WrittenFilm write_gif(const ShownJob& job, const FilmOptions& options, const std::filesystem::path& file,
                      std::uintmax_t limit, int threads, const FilmProgress& progress) {
    check_size(options.size);
    const std::vector<GifRung> rungs = gif_rungs(options.size, options.frames_per_second);
    std::size_t rung = 0;
    for (;;) {
        FilmOptions smaller = options;
        smaller.size = rungs[rung].size;
        smaller.frames_per_second = rungs[rung].frames_per_second;
        try {
            WrittenFilm film = try_gif(job, smaller, file, limit, threads, progress);
            if (rung > 0)
                film.made_smaller = "reduced from " + size_words(rungs[0].size) + " and " +
                                    rate_in_words(rungs[0].frames_per_second) + ", to keep to " +
                                    megabytes(static_cast<double>(limit));
            return film;
        } catch (const TooLarge& much) {
            const std::optional<std::size_t> next = next_rung(rungs, rung, much.expected, limit);
            if (!next)
                throw OutOfRange("limit of the GIF", megabytes(static_cast<double>(limit)),
                                 "at its smallest, " + size_words(smaller.size) + " and " +
                                     rate_in_words(smaller.frames_per_second) + ", the film takes " +
                                     megabytes(much.expected) +
                                     "; allow that, or show fewer steps or seconds");
            rung = *next;
        }
    }
}

}  // namespace overbend::film
