#include "scenes/documents/report/film_data.h"

namespace overbend::documents {

namespace {

film::Way way(job::Way w) {
    return w == job::Way::along_the_bend_line ? film::Way::along_the_bend_line : film::Way::in_the_plane;
}

// Empty for a hit that only the way between two states shows.
std::vector<std::pair<picture::Place, double>> state_by_state(const job::StepResult& step,
                                                              const job::Interference& f) {
    std::vector<std::pair<picture::Place, double>> found;
    for (int i = f.first_state; i <= f.last_state && i < static_cast<int>(step.clearance.size()); ++i) {
        const clearance::Closest& there = step.clearance[i];
        if (there.distance >= 0.0 || there.tool != f.deepest.tool) return {};
        found.emplace_back(there.at, -there.distance);
    }
    return found;
}

film::StrokeFilm stroke_film(const files::Case& c, const job::JobResult& job, int index) {
    const job::StepResult& step = job.steps[index];
    film::StrokeFilm film;
    film.step_name = step.name;
    film.recording = &step.stroke.recording;
    film.number = index + 1;
    film.way_in = way(step.way_in);
    film.way_off = way(step.way_off);
    const job::Blank& blank = job.blank;
    for (const int b : c.steps[index].bends) {
        picture::BendMark mark;
        mark.name = c.part.bends[b].name;
        mark.blank_position = blank.bend_line[b];
        // To the middles of the flats beside it, where the numbers of results.json are taken.
        mark.reach = blank.bend_line[b] - blank.flat_middle(b);
        mark.reach_after = blank.flat_middle(b + 1) - blank.bend_line[b];
        film.bends.push_back(mark);
    }
    for (const job::Interference& f : step.interferences)
        film.interferences.push_back(
            {{f.deepest.at, -f.deepest.distance,
              std::string("strip and ") + tool::role_word(step.stroke.recording.tools[f.deepest.tool].role)},
             f.first_state,
             f.last_state,
             state_by_state(step, f)});
    if (step.least.tool >= 0)
        for (const clearance::Closest& near : step.clearance) film.clearance.push_back(near.distance);
    return film;
}

}  // namespace

film::FilmJob film_data(const files::Case& c, const job::JobResult& job, const std::vector<int>& steps) {
    film::FilmJob film;
    film.title = c.title;
    film.material = c.material.title;
    film.strip_width = c.width;
    film.step_count = static_cast<int>(job.steps.size());
    for (const int step : steps) film.strokes.push_back(stroke_film(c, job, step));
    if (job.finished_angle.empty()) return film;
    film::FinishedPart part;
    part.recording = &job.steps.back().stroke.recording;
    for (std::size_t b = 0; b < c.part.bends.size(); ++b)
        part.bends.push_back(
            {c.part.bends[b].name, job.blank.bend_line[b], c.part.bends[b].angle, job.finished_angle[b]});
    film.finished = part;
    return film;
}

}  // namespace overbend::documents
