#include "render/report/still.h"

#include "render/report/html.h"
#include "render/report/page_style.h"
#include "render/report/player.h"
#include "render/report/stroke_json.h"
#include "sim/errors.h"
#include "sim/words.h"

namespace overbend::report {

using namespace picture;

namespace {

// The strip of one state, y down.
struct Drawn {
    const StripTrack& track;
    int state = 0;
    // A point of station i at a part of the thickness from the lower surface.
    std::string at(int i, double part) const {
        const int* const v =
            track.surfaces.data() + (static_cast<std::size_t>(state) * track.stations + i) * 4;
        const double x = v[0] + part * (v[2] - v[0]), y = v[1] + part * (v[3] - v[1]);
        return words("%.2f %.2f", x * place_quantum, 0.0 - y * place_quantum);
    }
    std::string ribbon(int first, int last, double low, double high) const {
        std::string d;
        for (int i = first; i <= last; ++i) d += (i > first ? "L" : "M") + at(i, low);
        for (int i = last; i >= first; --i) d += "L" + at(i, high);
        return d + "Z";
    }
};

// Every second step of colour: half the text, and no visible difference.
std::string layers(const Drawn& drawn) {
    const StripTrack& t = drawn.track;
    std::vector<std::string> of_step(static_cast<std::size_t>(colour_steps) + 1);
    for (int k = 0; k < t.bands; ++k)
        for (int i = 0; i + 1 < t.stations;) {
            const auto step = [&](int j) {
                const int row = drawn.state * (t.stations - 1) + j;
                return (t.stress[static_cast<std::size_t>(row) * t.bands + k] + colour_steps) / 2;
            };
            int end = i + 1;
            while (end + 1 < t.stations && step(end) == step(i)) ++end;
            of_step[step(i)] += drawn.ribbon(i, end, t.band_edge[k], t.band_edge[k + 1]);
            i = end;
        }
    const std::vector<std::string> colours = step_colours(colour_steps);
    std::string svg = "<g class=\"cells\">";
    for (std::size_t s = 0; s < of_step.size(); ++s)
        if (!of_step[s].empty())
            svg += words("<path fill=\"%s\" stroke=\"%s\" d=\"", colours[2 * s].c_str(),
                         colours[2 * s].c_str()) +
                   of_step[s] + "\"/>";
    return svg + "</g>";
}

std::string tools(const stroke::Recording& recording, const stroke::State& state, const PlayerView& shown) {
    std::string svg, labels;
    for (std::size_t k = 0; k < recording.tools.size(); ++k) {
        const tool::RigidTool& t = recording.tools[k];
        const Place at = stroke::tool_position(recording.tools, static_cast<int>(k), state);
        const char* const role = tool::role_word(t.role);
        svg += words(
                   "<path transform=\"translate(%.2f %.2f)\" "
                   "style=\"fill:var(--%s-fill);stroke:var(--%s-line)\" d=\"",
                   at.x(), 0.0 - at.y(), role, role) +
               outline_path(t.outline) + "\"/>";
    }
    const double size = shown.height / 32.0;
    for (const PlayerLabel& label : shown.labels)
        labels += words(
                      "<text x=\"%.2f\" y=\"%.2f\" font-size=\"%.3g\" stroke-width=\"%.3g\" "
                      "text-anchor=\"middle\">",
                      label.at.x(), 0.35 * size - label.at.y(), size, 0.28 * size) +
                  escaped(label.words) + "</text>";
    return svg + labels;
}

}  // namespace

std::string still_svg(const stroke::Recording& r, int state, const TrackOptions& colours,
                      const std::string& label) {
    if (state < 0 || state >= static_cast<int>(r.states.size()))
        throw OutOfRange("still", words("state %d", state), words("there are %zu", r.states.size()));
    // One state is enough, and its stations are fewer than those of the whole stroke.
    stroke::Recording one = r;
    one.states = {r.states[state]};
    TrackOptions how = colours;
    how.blank_positions.clear();
    const StripTrack track = track_strip(one, how);
    const PlayerView shown = player_view(r);
    const Drawn drawn{track, 0};
    return words(
               "<svg class=\"drawing stage-svg\" viewBox=\"%.2f %.2f %.2f %.2f\" role=\"img\" aria-label=\"",
               shown.low.x(), -(shown.low.y() + shown.height), shown.width, shown.height) +
           escaped(label) + "\">" + tools(r, r.states[state], shown) + layers(drawn) +
           "<path class=\"outline\" d=\"" + drawn.ribbon(0, track.stations - 1, 0.0, 1.0) + "\"/></svg>";
}

}  // namespace overbend::report
