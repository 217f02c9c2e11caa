// overbend film: the job as a film (MP4, GIF), as PNG frames, and stills of any instant.

#include <iostream>
#include <memory>

#include "render/film/encoder.h"
#include "render/film/film_file.h"
#include "render/film/frames.h"
#include "render/picture/numbers.h"
#include "scenes/commands/commands.h"
#include "scenes/commands/film_options.h"
#include "scenes/commands/film_still.h"
#include "scenes/commands/interruption.h"
#include "scenes/commands/job.h"
#include "scenes/commands/shop_print.h"
#include "scenes/commands/shown_steps.h"
#include "scenes/documents/report/shown_job.h"
#include "sim/counted.h"
#include "sim/errors.h"

namespace overbend::commands {

namespace {

namespace fs = std::filesystem;

// Everything that can be checked before the job is run, which takes a while.
struct Asked {
    film::FilmOptions how;
    std::vector<int> steps;
    std::vector<StillWanted> stills;
    std::vector<std::string> still_forms;
};

Asked look_over(const FilmCommand& given, const files::Case& c) {
    Asked asked;
    asked.how = film_options(given);
    asked.steps = chosen_steps(c, given.steps);
    for (const std::string& words : given.stills) asked.stills.push_back(read_still(c, words));
    asked.still_forms = given.still_forms;
    if (asked.still_forms.empty()) asked.still_forms = {"svg", "pdf", "png"};
    if (asked_for(given, "mp4") || asked_for(given, "gif"))
        film::require_encoder([] { return !Interruption::wanted(); });
    return asked;
}

job::JudgedJob run(const files::Case& c, const Output& output) {
    job::ProcessOptions how = with_progress(c, output);
    const auto tell = how.progress;
    how.progress = [tell](int step, double travel) {
        if (Interruption::wanted()) throw film::Interrupted();
        if (tell) tell(step, travel);
    };
    job::JudgedJob judged = job::judge_job(c, how);
    clear_progress(output);
    return judged;
}

// Reports progress now and then, and whether to go on.
film::FilmProgress watching(const Output& output) {
    const bool watched = shows_progress(output);
    const auto told = std::make_shared<int>(-1);
    return [watched, told](const std::string& what, int done, int wanted) {
        if (watched && done != *told && (done % 5 == 0 || done == wanted))
            std::cerr << "\r" << what << ": frame " << done << " of " << wanted << "    " << std::flush;
        *told = done;
        return !Interruption::wanted();
    };
}

void tell(const film::WrittenFilm& film) {
    std::cout << film.file.string() << ": " << film.size.width << "x" << film.size.height << ", "
              << counted(static_cast<std::size_t>(film.frames), "frame") << " at "
              << picture::short_number(film.frames_per_second) << " per second, "
              << fixed(film.frames / film.frames_per_second, 1) << " s, "
              << fixed(static_cast<double>(film.bytes) / 1e6, 2) << " MB"
              << (film.made_smaller.empty() ? "" : "; ") << film.made_smaller << "\n";
}

void write_films(const FilmCommand& given, const Asked& asked, const picture::ShownJob& show,
                 const fs::path& folder) {
    const film::FilmProgress progress = watching(given.output);
    std::vector<film::WrittenFilm> films;
    if (asked_for(given, "mp4"))
        films.push_back(film::write_mp4(show, asked.how, folder / "film.mp4", given.threads, progress));
    if (asked_for(given, "gif"))
        films.push_back(film::write_gif(show, asked.how, folder / "film.gif",
                                        static_cast<std::uintmax_t>(given.gif_limit * 1e6), given.threads,
                                        progress));
    if (films.empty()) return;
    clear_progress(given.output);
    if (given.output.quiet) return;
    for (const film::WrittenFilm& film : films) tell(film);
}

void write_frames(const FilmCommand& given, const Asked& asked, const picture::ShownJob& show,
                  const fs::path& folder) {
    film::PaintOptions paint;
    paint.threads = given.threads;
    const film::FilmProgress progress = watching(given.output);
    const film::PaintedFilm painted = film::paint_frames(
        show, asked.how, folder, paint, [&](int done, int wanted) { return progress("PNG", done, wanted); });
    clear_progress(given.output);
    if (!painted.complete()) throw film::Interrupted();
    if (given.output.quiet) return;
    for (const film::Sequence& s : painted.sequences)
        std::cout << s.folder.string() << ": " << counted(static_cast<std::size_t>(s.frames), "frame") << ", "
                  << (s.step_name.empty() ? "the whole job" : s.step_name) << "\n";
}

void write_stills(const FilmCommand& given, const Asked& asked, const picture::ShownJob& show,
                  const fs::path& folder) {
    if (asked.stills.empty()) return;
    const film::FrameList frames = film::timeline(show, asked.how);
    for (const StillWanted& still : asked.stills) {
        const int frame = frame_of(still, show, frames);
        const picture::DrawingList list = film::draw_frame(show, asked.how, frames, frame);
        for (const fs::path& file : write_still(list, still, folder, asked.still_forms))
            if (!given.output.quiet) std::cout << file.string() << "\n";
    }
}

Exit film(const FilmCommand& given) {
    const Interruption interruption;
    const files::Case c = read_job_case(given.file, given.out);
    const Asked asked = look_over(given, c);
    const job::JobResult result = run(c, given.output).result;
    require_solved(c, result);
    const picture::ShownJob show = documents::shown_job(c, result, asked.steps);
    const fs::path folder = make_folder(*given.out);
    write_stills(given, asked, show, folder);
    write_films(given, asked, show, folder);
    if (asked_for(given, "png")) write_frames(given, asked, show, folder);
    print_refusal(c, result);
    return verdict(c, result);
}

}  // namespace

void add_film(Program& app) {
    Command command = app.command("film", "Film of the job: MP4, GIF, PNG frames, stills");
    const auto given = std::make_shared<FilmCommand>();
    add_options(command, *given);
    command.footer(
        "Example: overbend film cases/cable-hook/case.toml --out out/film --size 1920x1080\n"
        "         overbend film cases/cable-hook/case.toml --out out/film --still hook:free --still-as svg");
    command.runs([given] { return film(*given); });
}

}  // namespace overbend::commands
