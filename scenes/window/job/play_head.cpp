#include "scenes/window/job/play_head.h"

#include <algorithm>
#include <cmath>

namespace overbend::window {

namespace {

constexpr double usual_speeds[] = {0.1, 0.2, 0.5, 1.0, 2.0, 5.0, 10.0};
constexpr double just_begun = 12.0;  // frames: going back from there leads to the stroke before

const Stretch& present(const PlayHead& head, const Playback& playback) {
    return playback.strokes[stroke_at(playback, head.at)];
}

}  // namespace

void advance(PlayHead& head, const Playback& playback, double seconds) {
    if (head.playing == Playing::no) return;
    const Stretch stroke = present(head, playback);
    const bool was_in = head.at >= stroke.first && head.at <= stroke.last;
    head.at += seconds * head.speed * playback.frames.frames_per_second;
    if (head.looping == Looping::yes && was_in && head.at > stroke.last) {
        const double length = std::max(1, stroke.last - stroke.first);
        head.at = stroke.first + std::fmod(head.at - stroke.last, length);
    }
    if (head.at < playback.last()) return;
    head.at = playback.last();
    head.playing = Playing::no;
}

void play_or_pause(PlayHead& head, const Playback& playback) {
    head.playing = head.playing == Playing::yes ? Playing::no : Playing::yes;
    if (head.playing == Playing::yes && head.at >= playback.last()) head.at = 0.0;
}

void go_to(PlayHead& head, const Playback& playback, double at) {
    head.playing = Playing::no;
    head.at = std::clamp(at, 0.0, playback.last());
}

void step_frames(PlayHead& head, const Playback& playback, int count) {
    const double whole = count > 0 ? std::floor(head.at + 1e-9) : std::ceil(head.at - 1e-9);
    go_to(head, playback, whole + count);
}

void next_stroke(PlayHead& head, const Playback& playback) {
    for (const Stretch& s : playback.strokes)
        if (s.first > head.at) {
            head.at = s.first;
            return;
        }
    head.at = playback.last();
}

void previous_stroke(PlayHead& head, const Playback& playback) {
    double to = 0.0;
    for (const Stretch& s : playback.strokes)
        if (s.first < head.at - just_begun) to = s.first;
    head.at = to;
}

bool go_to_first_interference(PlayHead& head, const Playback& playback) {
    if (playback.interferences.empty()) return false;
    go_to(head, playback, playback.interferences.front().first);
    return true;
}

double faster(double speed) {
    for (const double s : usual_speeds)
        if (s > speed * 1.001) return s;
    return greatest_speed;
}

double slower(double speed) {
    double found = least_speed;
    for (const double s : usual_speeds)
        if (s < speed * 0.999) found = s;
    return found;
}

}  // namespace overbend::window
