// Films as files: frames go to ffmpeg, a program of its own, through its standard input.
//
// What it writes stands beside the file under another name until it is whole: when anything goes wrong, what
// was there before stays, and nothing of the new film is left.

#pragma once

#include <array>
#include <filesystem>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "render/film/child_process.h"
#include "render/output/whole_file.h"
#include "render/picture/layout.h"

namespace overbend::film {

// There is no ffmpeg, or it cannot be started. The message says what to install.
struct NoEncoder : std::runtime_error {
    using std::runtime_error::runtime_error;
};

// The program: what the environment variable OVERBEND_FFMPEG names, else "ffmpeg" on PATH.
std::string encoder_program();

// Asks for its version. Throws NoEncoder: it cannot be started, fails, or gives no answer within ten seconds.
// Interrupted: keep_going said false.
void require_encoder(const KeepGoing& keep_going);

// Colours of a GIF, from the encoder's first run to its second: 16 x 16 pixels, four bytes each.
using GifPalette = std::string;

enum class Coding { mp4, gif_palette, gif };

// One film on its way to a file. Not used again after an error.
class Encoder {
  public:
    // Frames are yuv420p for an MP4 (H.264, constant rate, fast start; see yuv.h), bgrx for a GIF and its
    // palette. file: none for a palette. frames_per_second: any for an MP4; 100 / n for a GIF, which counts
    // hundredths of a second. Throws NoEncoder; std::runtime_error for a file that cannot be.
    Encoder(Coding coding, const std::filesystem::path& file, const picture::PictureSize& size,
            double frames_per_second, const GifPalette& palette = "");

    // Throws std::runtime_error: the encoder has ended; the message has the file and the encoder's last
    // words. Interrupted: keep_going said false.
    void take(const std::vector<std::uint8_t>& frame, const KeepGoing& keep_going);

    // How much stands in the file by now.
    std::uintmax_t bytes_written() const { return part_->size(); }

    // Waits for the encoder and sees that the film is whole. Its bytes. Throws as take.
    std::uintmax_t finish_encoding(const KeepGoing& keep_going);
    // Then it may have its name. Throws std::runtime_error.
    void give_name() { part_->give_name(); }
    // In place of both for a palette.
    GifPalette finish_palette(const KeepGoing& keep_going);

  private:
    void wait_for_success(const KeepGoing& keep_going);
    [[noreturn]] void fail(const std::string& status);

    std::filesystem::path file_;
    Coding coding_;
    picture::PictureSize size_;
    std::optional<output::PartFile> part_;  // none for a palette
    std::unique_ptr<ChildProcess> child_;   // ended before the part file goes
};

// True when a file's boxes add up to its length and its index (moov) stands before its pictures (mdat), so
// that it plays while it is loaded.
bool is_whole_mp4(const std::filesystem::path& file);

// True when a file begins as a GIF of that size, and ends as one.
bool is_whole_gif(const std::filesystem::path& file, const picture::PictureSize& size);

}  // namespace overbend::film
