#include "render/report/stroke_json.h"

#include <algorithm>
#include <cmath>
#include <nlohmann/json.hpp>

#include "render/report/packing.h"
#include "sim/units.h"
#include "sim/words.h"

namespace overbend::report {

using namespace picture;

namespace {

using Json = nlohmann::ordered_json;
using stroke::Recording;
using stroke::State;
constexpr double angle_part = 0.01 * degree, direction_part = 0.001, travel_part = 0.0001, force_part = 0.1;
constexpr int nothing_near =
    1 << 20;  // quanta; of a clearance when all of the strip lies in the forming zone

double rounded(double value) {
    return std::round(value * 1000.0) / 1000.0 + 0.0;
}

int quanta(double mm) {
    return in_parts(mm, place_quantum);
}

// Rows of the same length, one a state, as differences to the row before.
std::string packed_rows(std::vector<int> values, std::size_t row) {
    for (std::size_t i = values.size(); i-- > row;) values[i] -= values[i - row];
    return packed(values);
}

template <class Value>
std::string packed_states(const Recording& r, const Value& value) {
    std::vector<int> values;
    for (const State& s : r.states) values.push_back(value(s));
    return packed_rows(values, 1);
}

Json tools_json(const Recording& r) {
    Json tools = Json::array();
    for (std::size_t k = 0; k < r.tools.size(); ++k) {
        const tool::RigidTool& t = r.tools[k];
        Json one = {{"name", t.name},
                    {"role", tool::role_word(t.role)},
                    {"path", outline_path(t.outline)},
                    {"x", rounded(t.position.x())},
                    {"y", rounded(t.position.y())},
                    {"ram", t.moves_with_ram()}};
        if (t.draws_back > 0.0) one["back"] = rounded(t.draws_back);
        if (t.spring) {
            one["way"] = t.gives_way();
            one["compression"] = packed_states(r, [&](const State& s) {
                return k < s.compression.size() ? in_parts(s.compression[k], travel_part) : 0;
            });
        }
        tools.push_back(one);
    }
    return tools;
}

Json labels_json(const PlayerView& shown) {
    Json labels = Json::array();
    for (const PlayerLabel& label : shown.labels)
        labels.push_back({{"tool", label.tool},
                          {"words", label.words},
                          {"at", {rounded(label.at.x()), rounded(label.at.y())}},
                          {"half", rounded(label.half_width)},
                          {"inside", label.inside},
                          {"to", {rounded(label.leads_to.x()), rounded(label.leads_to.y())}}});
    return labels;
}

// Of each state: how many, then tool, place and force of each.
std::string packed_contacts(const Recording& r) {
    std::vector<int> values;
    for (const State& s : r.states) {
        values.push_back(static_cast<int>(s.contacts.size()));
        for (const stroke::ContactForce& c : s.contacts) {
            values.push_back(c.tool);
            for (const double v : {c.at.x(), c.at.y()}) values.push_back(quanta(v));
            for (const double v : {c.force.x(), c.force.y()}) values.push_back(in_parts(v, force_part));
        }
    }
    return packed(values);
}

Json bends_json(const ShownStroke& stroke, const StripTrack& track) {
    const Recording& r = *stroke.recording;
    Json bends = Json::array();
    for (const BendMark& bend : stroke.bends) {
        std::vector<int> rows;
        for (const State& s : r.states) {
            const MeasuredBend m = measured(r, s, bend);
            rows.push_back(in_parts(m.angle, angle_part));
            for (const double v : {m.corner.x(), m.corner.y()}) rows.push_back(quanta(v));
            for (const double v : {m.left.theta, m.right.theta}) rows.push_back(in_parts(v, direction_part));
        }
        Json one = {{"name", bend.name},
                    {"station", track.nearest(along_at(r, bend.blank_position))},
                    {"rows", packed_rows(rows, 5)}};
        if (bend.loaded) one["loaded"] = in_parts(*bend.loaded, angle_part);
        if (bend.free) one["free"] = in_parts(*bend.free, angle_part);
        bends.push_back(one);
    }
    return bends;
}

// Of each state: distance, place on the strip and on the tool, tool.
std::string packed_clearance(const ShownStroke& stroke) {
    std::vector<int> rows;
    for (const clearance::Closest& c : stroke.clearance) {
        const bool near = c.tool >= 0 && c.distance < nothing_near * place_quantum;
        rows.push_back(near ? quanta(c.distance) : nothing_near);
        for (const double v : {c.at.x(), c.at.y(), c.on_tool.x(), c.on_tool.y()})
            rows.push_back(near ? quanta(v) : 0);
        rows.push_back(c.tool);
    }
    return packed_rows(rows, 6);
}

Json hits_json(const ShownStroke& stroke) {
    Json hits = Json::array();
    for (const ShownHit& h : stroke.hits)
        hits.push_back({{"first", h.first_state},
                        {"last", h.last_state},
                        {"at", {rounded(h.deepest.at.x()), rounded(h.deepest.at.y())}},
                        {"depth", rounded(h.deepest.depth)},
                        {"words", h.words}});
    return hits;
}

Json pace_json(const Pace& pace) {
    std::vector<int> rows;
    for (const PaceKey& k : pace.keys) {
        rows.push_back(in_parts(k.seconds, 0.001));
        rows.push_back(in_parts(k.state, 0.001));
        rows.push_back(in_parts(k.travel, travel_part));
    }
    Json passages = Json::array();
    for (const PlayerPassage& p : pace.passages)
        passages.push_back({{"at", in_parts(p.seconds, 0.001)}, {"name", p.name}, {"words", p.words}});
    return {
        {"keys", packed_rows(rows, 3)}, {"passages", passages}, {"pressed", in_parts(pace.pressed, 0.001)}};
}

Json lines_json(const ShownJob& job, const Recording& r, const StripTrack& track) {
    Json lines = Json::array();
    for (const BendLine& line : job.bends)
        lines.push_back({{"name", line.name}, {"station", track.nearest(along_at(r, line.blank_position))}});
    return lines;
}

}  // namespace

std::string outline_path(const tool::ArcOutline& outline) {
    const auto point = [](const tool::Vec2& p) { return words("%.4g %.4g", p.x() + 0.0, 0.0 - p.y()); };
    std::string path = "M" + point(outline.pieces().front().start);
    for (const tool::Piece& piece : outline.pieces()) {
        if (!piece.is_arc()) {
            path += "L" + point(piece.end);
            continue;
        }
        // Counter-clockwise with y up is the sense of falling angles once y points down. Half a turn and more
        // is written as two arcs: the ends of one would not say which circle it is on.
        const int parts = std::abs(piece.sweep) > 3.0 ? 2 : 1;
        const tool::Vec2 from = piece.start - piece.centre;
        for (int i = 1; i <= parts; ++i) {
            const double turn = piece.sweep * i / parts;
            const tool::Vec2 on(std::cos(turn) * from.x() - std::sin(turn) * from.y(),
                                std::sin(turn) * from.x() + std::cos(turn) * from.y());
            path += words("A%.5g %.5g 0 0 %d ", piece.radius, piece.radius, piece.sweep > 0.0 ? 0 : 1) +
                    point(i == parts ? piece.end : tool::Vec2(piece.centre + on));
        }
    }
    return path + "Z";
}

std::string in_script(const Json& json) {
    std::string text;
    for (const char c : json.dump()) text += c == '<' ? "\\u003c" : std::string(1, c);
    return text;
}

Json stroke_json(const ShownJob& job, const ShownStroke& stroke, const PassageWords& told,
                 const TrackOptions& how) {
    const Recording& r = *stroke.recording;
    const StripTrack track = track_strip(r, how);
    const PlayerView shown = player_view(r);
    std::vector<double> edges = track.band_edge;
    std::for_each(edges.begin(), edges.end(), [](double& e) { e = rounded(e); });
    return {{"name", stroke.name},
            {"number", stroke.number},
            {"thickness", r.thickness},
            {"window",
             {rounded(shown.low.x()), rounded(shown.low.y()), rounded(shown.width), rounded(shown.height)}},
            {"states", track.states},
            {"stations", track.stations},
            {"edges", edges},
            {"surfaces", packed(surface_differences(track))},
            {"stress", packed(colour_differences(track, track.stress))},
            {"strain", packed(colour_differences(track, track.strain))},
            {"travel", packed_states(r, [](const State& s) { return in_parts(s.travel, travel_part); })},
            {"force", packed_states(
                          r, [&](const State& s) { return in_parts(s.punch_force * job.strip_width, 1.0); })},
            {"tools", tools_json(r)},
            {"labels", labels_json(shown)},
            {"contacts", packed_contacts(r)},
            {"bends", bends_json(stroke, track)},
            {"lines", lines_json(job, r, track)},
            {"clearance", packed_clearance(stroke)},
            {"hits", hits_json(stroke)},
            {"loaded", stroke::loaded_state(r)},
            {"pace", pace_json(pace_of(r, told, shown.raised))}};
}

}  // namespace overbend::report
