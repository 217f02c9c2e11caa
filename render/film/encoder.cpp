#include "render/film/encoder.h"

#include <chrono>
#include <cmath>
#include <cstdlib>
#include <cstring>
#include <fstream>
#include <iterator>
#include <sstream>
#include <stdexcept>
#include <system_error>

namespace overbend::film {

using namespace picture;

namespace {

namespace fs = std::filesystem;

constexpr std::size_t palette_bytes = 16 * 16 * 4;
constexpr std::chrono::seconds answer_within{10};  // usual: a tenth of one

// As an exact fraction where the rate is a whole number or a thousandth of one.
std::string rate_words(double frames_per_second) {
    return std::to_string(std::lround(frames_per_second * 1000.0)) + "/1000";
}

// Options, a blank between two.
void add(std::vector<std::string>& words, const std::string& options) {
    std::istringstream in(options);
    words.insert(words.end(), std::istream_iterator<std::string>(in), {});
}

// Frames as they come through the pipe.
void add_input(std::vector<std::string>& words, const char* pixels, const PictureSize& size,
               double frames_per_second) {
    add(words, std::string("-f rawvideo -pix_fmt ") + pixels + " -video_size " + std::to_string(size.width) +
                   "x" + std::to_string(size.height) + " -framerate " + rate_words(frames_per_second) +
                   " -i pipe:0");
}

std::vector<std::string> command(Coding coding, const std::string& file, const PictureSize& size,
                                 double rate) {
    // No questions, no reports; the same film has the same head whenever it is written.
    std::vector<std::string> words{encoder_program()};
    add(words, "-nostdin -hide_banner -loglevel error -xerror -y");
    add_input(words, coding == Coding::mp4 ? "yuv420p" : "bgr0", size, rate);
    if (coding == Coding::gif_palette) {
        // At most 255 colours and a transparent one, which unchanged pixels are painted with.
        add(words, "-vf palettegen=max_colors=256:reserve_transparent=1:stats_mode=full -frames:v 1");
        add(words, "-f rawvideo -pix_fmt rgba pipe:1");
        return words;
    }
    if (coding == Coding::mp4) {
        // A key picture every two seconds, or thirty of a slow film, for jumps. Colours as in yuv.h.
        add(words, "-an -c:v libx264 -preset veryfast -tune animation -crf 18 -g " +
                       std::to_string(std::max(30L, std::lround(2.0 * rate))));
        add(words, "-profile:v high -pix_fmt yuv420p -color_range tv -colorspace bt709");
        add(words, "-color_primaries bt709 -color_trc bt709 -vsync cfr -movflags +faststart");
    } else {
        add(words, "-f rawvideo -pix_fmt rgba -video_size 16x16 -framerate 1 -i pipe:3");
        add(words, "-lavfi [0:v][1:v]paletteuse=dither=none:diff_mode=rectangle -vsync cfr -loop 0");
    }
    add(words,
        std::string("-map_metadata -1 -fflags +bitexact -f ") + (coding == Coding::mp4 ? "mp4" : "gif"));
    words.push_back(file);
    return words;
}

std::string no_encoder_words(const std::string& program, const std::string& reason) {
    return "the program '" + program + "', which encodes films, cannot be started (" + reason +
           "): install ffmpeg (on Debian: apt install ffmpeg), or write --formats png";
}

// A file name as the encoder takes it: never a protocol ("c:film.mp4"), never an option.
std::string encoder_path(const fs::path& path) {
    return "file:" + path.string();
}

std::string ended_words(int status) {
    if (status > 128) return std::string("the encoder was stopped: ") + ::strsignal(status - 128);
    return "the encoder stopped early, with status " + std::to_string(status);
}

}  // namespace

std::string encoder_program() {
    const char* named = std::getenv("OVERBEND_FFMPEG");
    return named != nullptr && *named != '\0' ? named : "ffmpeg";
}

void require_encoder(const KeepGoing& keep_going) {
    const std::string program = encoder_program();
    const auto until = std::chrono::steady_clock::now() + answer_within;
    const auto in_time = [&] { return std::chrono::steady_clock::now() < until; };
    try {
        ChildProcess child({program, "-nostdin", "-hide_banner", "-version"});
        const int status = child.finish([&] { return in_time() && (!keep_going || keep_going()); });
        if (status != 0) throw NoEncoder(no_encoder_words(program, "status " + std::to_string(status)));
    } catch (const std::system_error& error) {
        throw NoEncoder(no_encoder_words(program, error.code().message()));
    } catch (const Interrupted&) {
        if (in_time()) throw;
        throw NoEncoder(no_encoder_words(
            program, "no answer within " + std::to_string(answer_within.count()) + " seconds"));
    }
}

Encoder::Encoder(Coding coding, const fs::path& file, const PictureSize& size, double frames_per_second,
                 const GifPalette& palette)
    : file_(file), coding_(coding), size_(size) {
    if (coding != Coding::gif_palette) part_.emplace(file);
    const std::vector<std::string> words =
        command(coding, part_ ? encoder_path(part_->place()) : "", size, frames_per_second);
    try {
        child_ = std::make_unique<ChildProcess>(words, palette);
    } catch (const std::system_error& error) {
        throw NoEncoder(no_encoder_words(words.front(), error.code().message()));
    }
}

void Encoder::fail(const std::string& status) {
    std::string words = child_->last_words();
    if (part_) {
        // The message begins with the temporary file name; the reason follows it.
        const std::string meanwhile = encoder_path(part_->place()) + ": ";
        const std::size_t at = words.rfind(meanwhile);
        if (at != std::string::npos) words = words.substr(at + meanwhile.size());
    }
    const std::string what = coding_ == Coding::gif_palette ? "the colours of the film" : file_.string();
    throw std::runtime_error(what + ": cannot be written: " + (words.empty() ? status : words));
}

void Encoder::take(const std::vector<std::uint8_t>& frame, const KeepGoing& keep_going) {
    if (child_->write(frame.data(), frame.size(), keep_going)) return;
    fail(ended_words(child_->finish(keep_going)));
}

void Encoder::wait_for_success(const KeepGoing& keep_going) {
    const int status = child_->finish(keep_going);
    // It may report a full disk and still end with status 0.
    if (status != 0 || !child_->last_words().empty()) fail(ended_words(status));
}

std::uintmax_t Encoder::finish_encoding(const KeepGoing& keep_going) {
    wait_for_success(keep_going);
    if (coding_ == Coding::mp4 && !is_whole_mp4(part_->place())) fail("the film is incomplete");
    if (coding_ == Coding::gif && !is_whole_gif(part_->place(), size_)) fail("the GIF is incomplete");
    return bytes_written();
}

GifPalette Encoder::finish_palette(const KeepGoing& keep_going) {
    wait_for_success(keep_going);
    if (child_->output().size() != palette_bytes) fail("the encoder found no colours");
    return child_->output();
}

bool is_whole_mp4(const fs::path& file) {
    std::error_code error;
    const std::uintmax_t length = fs::file_size(file, error);
    std::ifstream in(file, std::ios::binary);
    if (error || !in) return false;
    std::uintmax_t at = 0;
    bool index = false, pictures = false;
    while (at + 8 <= length) {
        std::array<unsigned char, 16> head{};
        in.seekg(static_cast<std::streamoff>(at));
        if (!in.read(reinterpret_cast<char*>(head.data()), at + 16 <= length ? 16 : 8)) return false;
        const auto number = [&](std::size_t from, std::size_t bytes) {
            std::uintmax_t value = 0;
            for (std::size_t i = 0; i < bytes; ++i) value = value * 256 + head[from + i];
            return value;
        };
        std::uintmax_t size = number(0, 4);
        if (size == 1) size = number(8, 8);  // a long one has its size behind its name
        const std::string name(reinterpret_cast<const char*>(head.data()) + 4, 4);
        if (size < 8 || size > length - at) return false;
        if (name == "moov" && !pictures) index = true;
        if (name == "mdat") pictures = true;
        at += size;
    }
    return at == length && index && pictures;
}

bool is_whole_gif(const fs::path& file, const PictureSize& size) {
    std::ifstream in(file, std::ios::binary);
    std::array<unsigned char, 10> head{};
    char last = 0;
    if (!in.read(reinterpret_cast<char*>(head.data()), head.size())) return false;
    if (!in.seekg(-1, std::ios::end) || !in.get(last)) return false;
    const int width = head[6] + 256 * head[7], height = head[8] + 256 * head[9];
    return std::memcmp(head.data(), "GIF89a", 6) == 0 && width == size.width && height == size.height &&
           last == ';';
}

}  // namespace overbend::film
