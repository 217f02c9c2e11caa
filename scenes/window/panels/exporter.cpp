#include "scenes/window/panels/exporter.h"

#include <system_error>
#include <thread>

#include "render/film/encoder.h"
#include "render/film/film_file.h"
#include "render/output/whole_file.h"
#include "render/picture/painter.h"
#include "scenes/documents/report/report_files.h"
#include "sim/words.h"

namespace overbend::window {

namespace fs = std::filesystem;

namespace {

constexpr double percent = 100.0;

void make_folder(const fs::path& folder) {
    std::error_code error;
    if (folder.empty()) throw std::runtime_error("no folder is named; give one that can be written");
    fs::create_directories(folder, error);
    std::error_code ignored;
    if (error || !fs::is_directory(folder, ignored))
        throw std::runtime_error("the folder " + folder.string() + " cannot be created" +
                                 (error ? ": " + error.message() : "") + "; give one that can be written");
}

std::string lies(const fs::path& file) {
    std::error_code ignored, error;
    const std::uintmax_t bytes = fs::file_size(file, error);
    return fs::absolute(file, ignored).lexically_normal().string() +
           (error ? "" : words(", %.2f MB", static_cast<double>(bytes) / 1e6));
}

const char* ending(FrameForm form) {
    return form == FrameForm::png ? ".png" : form == FrameForm::svg ? ".svg" : ".pdf";
}

void write_frame(const picture::DrawingList& list, FrameForm form, const fs::path& file) {
    switch (form) {
        case FrameForm::png:
            return picture::write_png(list, file);
        case FrameForm::svg:
            return picture::write_svg(list, file);
        case FrameForm::pdf:
            return picture::write_pdf(list, file);
    }
}

}  // namespace

std::shared_ptr<Exporter::Progress> Exporter::begin(const std::string& what) {
    what_ = what;
    told_.clear();
    failed_ = false;
    progress_ = std::make_shared<Progress>();
    return progress_;
}

void Exporter::frame(PictureRequest seen, FrameForm form, const fs::path& folder) {
    seen.names = picture::Names::placed_anew;
    begin("picture");
    background_.start([seen, form, folder](const Wanted&) {
        make_folder(folder);
        const double second = seen.at / seen.playback->frames.frames_per_second;
        const fs::path file = folder / (words("frame_%06.2fs", second) + ending(form));
        write_frame(PicturePainter::drawing_of(seen), form, file);
        return Written{lies(file)};
    });
}

void Exporter::film(const PictureRequest& seen, const fs::path& folder) {
    const auto progress = begin("film");
    background_.start([seen, folder, progress](const Wanted& wanted) {
        make_folder(folder);
        film::FilmOptions how;
        how.size = {1920, 1080};
        how.theme = seen.theme, how.colouring = seen.colouring;
        how.lens = seen.playback->options.lens, how.charts = seen.playback->options.charts;
        how.cards = film::Cards::shown;
        how.springback_scale = seen.springback_scale;
        const int threads = static_cast<int>(std::max(1u, std::thread::hardware_concurrency()));
        try {
            film::require_encoder([&] { return wanted.still(); });
            const film::WrittenFilm written =
                film::write_mp4(seen.playback->shown, how, folder / "film.mp4", threads,
                                [&](const std::string&, int done, int all) {
                                    progress->wanted = all, progress->done = done;
                                    return wanted.still();
                                });
            return Written{lies(written.file)};
        } catch (const film::Interrupted&) {
            throw Cancelled();
        }
    });
}

void Exporter::report(const SharedJob& job, const fs::path& folder) {
    begin("report");
    background_.start([job, folder](const Wanted& wanted) {
        if (!job->result.solved)
            throw std::runtime_error("the job was not solved, so there is no report; see the findings");
        make_folder(folder);
        job::JobResult copy = job->result;  // lent to the page
        const std::string page =
            documents::report_page(job->c, copy, job->shop, documents::report_drawings(job->c, copy));
        wanted.check();
        const fs::path file = folder / "report.html";
        output::write_whole(file, page);
        wanted.check();
        return Written{lies(file), lies(documents::write_sheets(job->c, job->result, folder))};
    });
}

void Exporter::cancel() {
    if (!background_.busy()) return;
    background_.cancel();
    told_ = {"The " + what_ + " was cancelled."};
    failed_ = false;
}

std::string Exporter::progress_words() const {
    if (!progress_ || progress_->wanted == 0) return what_;
    return words("%s: frame %d of %d", what_.c_str(), progress_->done.load(), progress_->wanted.load());
}

double Exporter::part_done() const {
    if (!progress_ || progress_->wanted == 0) return 0.0;
    return static_cast<double>(progress_->done) / progress_->wanted;
}

bool Exporter::take() {
    bool changed = false;
    try {
        if (std::optional<Written> written = background_.take()) {
            told_ = std::move(*written);
            failed_ = false;
            changed = true;
        }
    } catch (const std::exception& error) {
        told_ = {error.what()};
        failed_ = true;
        changed = true;
    }
    // Progress is reported in per cent.
    const int now = background_.busy() ? static_cast<int>(percent * part_done()) : -1;
    changed = changed || now != seen_;
    seen_ = now;
    return changed;
}

}  // namespace overbend::window
