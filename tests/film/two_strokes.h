// A job of two strokes for checks of films: the second after the strip was turned end for end.

#pragma once

#include "render/film/timeline.h"
#include "tests/picture/synthetic_recording.h"

namespace overbend::tests {

struct TwoStrokes {
    stroke::Recording lip, root;
    picture::ShownJob job;

    TwoStrokes() {
        SyntheticStroke first;
        first.bend_line = 14.0;
        lip = synthetic_recording(first);
        SyntheticStroke second;
        second.bend_line = 28.0;
        second.old_bend_line = 14.0;
        second.old_angle = first.end_angle - first.springback;
        second.end_angle = 1.2;
        second.turned = true;
        root = synthetic_recording(second);
        job.title = "Under-desk cable hook";
        job.strip_width = 20.0;
        job.strokes = {{"lip", &lip, {{"lip", 14.0}}}, {"root", &root, {{"root", 28.0}}}};
    }
    TwoStrokes(const TwoStrokes&) = delete;  // the job points into it
};

}  // namespace overbend::tests
