// overbend film: the job as pictures, a PNG sequence for every stroke and one for the whole job.

#include <algorithm>
#include <iostream>
#include <map>
#include <memory>
#include <optional>

#include "render/film/frames.h"
#include "scenes/program/commands.h"
#include "scenes/program/job.h"
#include "sim/errors.h"

namespace overbend::program {

namespace {

struct FilmCommand {
    std::string file;
    std::optional<std::string> out = "out/film";
    std::string size = "1280x720";
    std::string theme = "light";
    std::string colour = "stress";
    double frames_per_second = 30.0;
    double seconds_per_stroke = 8.0;
    int threads = 0;
    Output output;
};

const std::map<std::string, render::PictureSize> sizes = {{"1280x720", {1280, 720}},
                                                          {"1920x1080", {1920, 1080}}};

render::StrokeFilm stroke_film(const Job& job, int index) {
    const scenes::StepResult& step = job.result.steps[index];
    render::StrokeFilm film;
    film.step_name = step.name;
    film.recording = &step.stroke.recording;
    const scenes::Blank& blank = job.result.blank;
    for (const int b : job.c.steps[index].bends) {
        render::BendMark mark;
        mark.name = job.c.part.bends[b].name;
        mark.blank_position = blank.bend_line[b];
        // To the middles of the flats beside it, where the numbers of results.json are taken.
        mark.reach = blank.bend_line[b] - blank.flat_middle(b);
        mark.reach_after = blank.flat_middle(b + 1) - blank.bend_line[b];
        film.bends.push_back(mark);
    }
    for (const scenes::Interference& f : step.interferences)
        film.interferences.push_back(
            {{f.deepest.at, -f.deepest.distance,
              std::string("strip and ") + tool::role_word(step.stroke.recording.tools[f.deepest.tool].role)},
             f.first_state,
             f.last_state});
    if (step.least.tool >= 0)
        for (const clearance::Closest& c : step.clearance) film.clearance.push_back(c.distance);
    return film;
}

void film(const FilmCommand& given, int& status) {
    const Job job = run_job(given.file, given.out, given.output);
    if (!job.result.solved) throw NotSolved(job.result.findings.front());

    render::FilmJob show;
    show.title = job.c.title;
    show.strip_width = job.c.width;
    for (int i = 0; i < static_cast<int>(job.result.steps.size()); ++i)
        show.strokes.push_back(stroke_film(job, i));
    render::FilmOptions how;
    how.size = sizes.at(given.size);
    how.theme = given.theme == "dark" ? render::Theme::dark : render::Theme::light;
    how.colouring =
        given.colour == "strain" ? render::Colouring::plastic_strain : render::Colouring::hoop_stress;
    how.frames_per_second = given.frames_per_second;
    how.seconds_per_stroke = given.seconds_per_stroke;
    render::PaintOptions paint;
    paint.threads = given.threads;
    const bool watched = shows_progress(given.output);
    const render::PaintedFilm painted =
        render::paint_frames(show, how, make_folder(*given.out), paint, [&](int done, int wanted) {
            if (watched) std::cerr << "\rframe " << done << " of " << wanted << "   " << std::flush;
            return true;
        });
    if (watched) std::cerr << "\n";
    if (!given.output.quiet)
        for (const render::Sequence& s : painted.sequences)
            std::cout << s.folder.string() << ": " << s.frames << " frames, "
                      << (s.step_name.empty() ? "the whole job" : s.step_name) << "\n";
    status = static_cast<int>(verdict(job.result));
}

}  // namespace

void add_film(CLI::App& app, int& status) {
    CLI::App* command =
        app.add_subcommand("film", "Paints the job as PNG frames, stroke by stroke and as a whole");
    const auto given = std::make_shared<FilmCommand>();
    command->add_option("case", given->file, "The case file")->required();
    command->add_option("--out", given->out, "Folder for the frames")->capture_default_str();
    command->add_option("--size", given->size, "Picture size in pixels")
        ->check(CLI::IsMember({"1280x720", "1920x1080"}))
        ->capture_default_str();
    command->add_option("--theme", given->theme, "light for paper, dark for a dark room")
        ->check(CLI::IsMember({"light", "dark"}))
        ->capture_default_str();
    command
        ->add_option("--colour", given->colour,
                     "What the layers' colours show: hoop stress or plastic strain")
        ->check(CLI::IsMember({"stress", "strain"}))
        ->capture_default_str();
    command->add_option("--rate", given->frames_per_second, "Frames a second")
        ->check(from_to(1.0, 120.0, ""))
        ->capture_default_str();
    command->add_option("--seconds", given->seconds_per_stroke, "Seconds a stroke")
        ->check(from_to(1.0, 120.0, "s"))
        ->capture_default_str();
    command->add_option("--threads", given->threads, "Painters; 0: one a core")
        ->check(whole_from_to(0, 256))
        ->capture_default_str();
    add_quiet(*command, given->output);
    command->footer("Example: overbend film cases/cable-hook/case.toml --out out/film --size 1920x1080");
    command->callback([given, &status] { film(*given, status); });
}

}  // namespace overbend::program
