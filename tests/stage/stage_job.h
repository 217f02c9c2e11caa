// A case's strokes as what the stage draws: each recording with its information, as a film asks for it.

#pragma once

#include <string>
#include <vector>

#include "render/picture/stage.h"
#include "scenes/files/case/read_case.h"
#include "scenes/job/run/process.h"

namespace overbend::tests {

struct StagedStroke {
    const stroke::Recording* recording = nullptr;
    picture::StageInfo info;  // with the angles, which are told once they have come to be
    double loaded_at = 0.0;   // the instant at the stop
    double free_at = 0.0;     // the last one
};

struct StageJob {
    files::Case c;
    job::JobResult result;
    std::vector<StagedStroke> strokes;

    explicit StageJob(const std::string& path) : c(files::read_case(path)), result(job::run_process(c, {})) {
        std::vector<const stroke::Recording*> recordings;
        for (const job::StepResult& step : result.steps) recordings.push_back(&step.stroke.recording);
        const double limit = picture::colour_limit(recordings, picture::Colouring::hoop_stress);
        for (size_t i = 0; i < result.steps.size(); ++i) strokes.push_back(staged(i, limit));
    }
    StageJob(const StageJob&) = delete;  // the strokes point into the result
    StageJob& operator=(const StageJob&) = delete;

  private:
    StagedStroke staged(size_t index, double limit) const {
        const job::StepResult& step = result.steps[index];
        StagedStroke s;
        s.recording = &step.stroke.recording;
        s.info.job_title = c.title;
        s.info.step_name = step.name;
        s.info.step_number = static_cast<int>(index) + 1;
        s.info.step_count = static_cast<int>(c.steps.size());
        s.info.strip_width = c.width;
        s.info.colour_limit = limit;
        for (const int b : c.steps[index].bends) {
            picture::BendMark mark;
            mark.name = c.part.bends[b].name;
            mark.blank_position = result.blank.bend_line[b];
            mark.reach = result.blank.bend_line[b] - result.blank.flat_middle(b);
            mark.reach_after = result.blank.flat_middle(b + 1) - result.blank.bend_line[b];
            s.info.bends.push_back(mark);
        }
        for (size_t b = 0; b < c.part.bends.size(); ++b)
            s.info.ticks.push_back({c.part.bends[b].name, result.blank.bend_line[b]});
        for (const job::Interference& f : step.interferences)
            s.info.interferences.push_back(
                {f.deepest.at, -f.deepest.distance,
                 std::string("strip and ") + tool::role_word(s.recording->tools[f.deepest.tool].role)});
        const std::vector<stroke::State>& states = s.recording->states;
        for (size_t k = 0; k < states.size(); ++k)
            if (states[k].phase <= stroke::Phase::held) s.loaded_at = static_cast<double>(k);
        s.free_at = static_cast<double>(states.size()) - 1.0;
        return s;
    }
};

// The information at an instant: what comes after the stop has its ghost, and angles are told once they have
// come to be.
inline picture::StageInfo info_at(const StagedStroke& stroke, double instant) {
    picture::StageInfo info = stroke.info;
    if (instant > stroke.loaded_at) info.ghost = stroke.loaded_at;
    for (picture::BendMark& bend : info.bends) {
        const auto angle_at = [&](double when) {
            return measured(*stroke.recording, picture::state_at(*stroke.recording, when), bend).angle;
        };
        if (instant >= stroke.loaded_at) bend.loaded = angle_at(stroke.loaded_at);
        if (instant >= stroke.free_at) bend.free = angle_at(stroke.free_at);
    }
    return info;
}

}  // namespace overbend::tests
