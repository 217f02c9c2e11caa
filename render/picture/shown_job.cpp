#include "render/picture/shown_job.h"

#include <algorithm>
#include <cmath>
#include <tuple>

#include "sim/errors.h"
#include "sim/words.h"

namespace overbend::picture {

int number_of(const ShownJob& job, int index) {
    const int number = job.strokes[index].number;
    return number > 0 ? number : index + 1;
}

int stroke_count(const ShownJob& job) {
    return job.stroke_count > 0 ? job.stroke_count : static_cast<int>(job.strokes.size());
}

std::vector<std::string> problems(const ShownJob& job) {
    std::vector<std::string> sentences;
    for (const ShownFinding& f : job.findings)
        if (f.severity == Severity::stops) sentences.push_back(f.words);
    return sentences;
}

std::string material_words(const ShownJob& job) {
    return words("%s, %g mm", job.material.c_str(), job.thickness);
}

std::string strip_words(const ShownJob& job) {
    return material_words(job) + words(" thick, %g mm wide", job.strip_width);
}

void check_strokes(const ShownJob& job, const std::string& what) {
    if (job.strokes.empty()) throw OutOfRange(what, "the job has no strokes", "it must have at least one");
    for (const ShownStroke& stroke : job.strokes) {
        const std::string named = "stroke \"" + stroke.name + "\"";
        if (!stroke.recording)
            throw OutOfRange(what, named + " has no recording",
                             "every stroke must be recorded before it is shown");
        check_recording(*stroke.recording);
        if (!stroke.clearance.empty() && stroke.clearance.size() != stroke.recording->states.size())
            throw OutOfRange(what,
                             named + words(" has %zu clearances for %zu states", stroke.clearance.size(),
                                           stroke.recording->states.size()),
                             "there must be one for each recorded state, or none");
    }
}

double colour_limit(const ShownJob& job, Colouring colouring) {
    std::vector<const stroke::Recording*> recordings;
    for (const ShownStroke& stroke : job.strokes) recordings.push_back(stroke.recording);
    return colour_limit(recordings, colouring);
}

std::vector<InterferenceMark> hits_at(const ShownStroke& stroke, double instant) {
    std::vector<InterferenceMark> marks;
    for (const ShownHit& hit : stroke.hits) {
        if (!hit.is_there(instant)) continue;
        marks.push_back(hit.deepest);
        const auto state = static_cast<std::size_t>(std::lround(instant - hit.first_state));
        if (state < hit.in_states.size())
            std::tie(marks.back().at, marks.back().depth) = hit.in_states[state];
    }
    return marks;
}

std::vector<InterferenceMark> deepest_hits_at(const ShownStroke& stroke, double instant) {
    std::vector<InterferenceMark> marks;
    for (const ShownHit& hit : stroke.hits)
        if (hit.is_there(instant)) marks.push_back({hit.deepest.at, hit.deepest.depth, ""});
    return marks;
}

std::optional<double> clearance_at(const ShownStroke& stroke, double instant) {
    const std::vector<clearance::Closest>& all = stroke.clearance;
    if (std::none_of(all.begin(), all.end(), [](const auto& near) { return near.tool >= 0; })) return {};
    const auto before = static_cast<std::size_t>(std::floor(instant)),
               after = static_cast<std::size_t>(std::ceil(instant));
    return std::min(all[before].distance, all[std::min(after, all.size() - 1)].distance);
}

}  // namespace overbend::picture
