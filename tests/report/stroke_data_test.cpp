// What a page carries of each stroke, read back from the page itself and held against the recording.
//
// Allowed  half of each quantum: 0.0025 mm, 0.00005 mm of travel, 0.5 N, 0.005 degrees.

#include <doctest/doctest.h>

#include <cmath>

#include "render/report/strip_track.h"
#include "render/report/stroke_json.h"
#include "sim/units.h"
#include "tests/files/small_case.h"
#include "tests/report/ran_job.h"
#include "tests/report/unpacked.h"

using namespace overbend;
using namespace overbend::tests;

namespace {

// Run once for all checks.
const RanJob& small_job() {
    static const RanJob job = ran_job(small_case);
    return job;
}

const RanJob& pad_job() {
    static const RanJob job = ran_file("cases/channel-with-pad/case.toml");
    return job;
}

nlohmann::json data_of(const RanJob& ran, int stroke) {
    return data_in(ran.html, "stroke-" + std::to_string(stroke + 1) + "-data");
}

// Runs a check on every stroke of both jobs.
template <class Check>
void for_every_stroke(const Check& check) {
    for (const RanJob* ran : {&small_job(), &pad_job()})
        for (int i = 0; i < static_cast<int>(ran->job().steps.size()); ++i) {
            CAPTURE(ran->c.title);
            CAPTURE(i);
            check(*ran, ran->job().steps[i], data_of(*ran, i));
        }
}

}  // namespace

TEST_CASE("data: surfaces of every state, as recorded") {
    for_every_stroke([](const RanJob&, const job::StepResult& step, const nlohmann::json& data) {
        const stroke::Recording& r = step.stroke.recording;
        const std::size_t n = data["stations"], states = data["states"];
        REQUIRE(states == r.states.size());
        const std::vector<int> surfaces = unpacked_surfaces(data["surfaces"], n);
        REQUIRE(surfaces.size() == states * n * 4);
        // The strip's ends are stations in any case.
        for (std::size_t s = 0; s < states; ++s) {
            const std::vector<picture::Station> all = picture::stations(r, r.states[s], 1.0);
            for (const bool right : {false, true}) {
                const picture::Station& end = right ? all.back() : all.front();
                const std::size_t at = (s * n + (right ? n - 1 : 0)) * 4;
                const picture::Place lower = end.at(end.edge.front()), upper = end.at(end.edge.back());
                CHECK(std::abs(surfaces[at] * 0.005 - lower.x()) <= 0.00251);
                CHECK(std::abs(surfaces[at + 1] * 0.005 - lower.y()) <= 0.00251);
                CHECK(std::abs(surfaces[at + 2] * 0.005 - upper.x()) <= 0.00251);
                CHECK(std::abs(surfaces[at + 3] * 0.005 - upper.y()) <= 0.00251);
            }
        }
        const std::size_t cells = (n - 1) * (data["edges"].size() - 1);
        CHECK(unpacked_rows(data["stress"], cells).size() == states * cells);
        CHECK(unpacked_rows(data["strain"], cells).size() == states * cells);
    });
}

TEST_CASE("data: travel, force, springs and contacts of every state") {
    for_every_stroke([](const RanJob& ran, const job::StepResult& step, const nlohmann::json& data) {
        const stroke::Recording& r = step.stroke.recording;
        const std::vector<int> travel = unpacked_rows(data["travel"], 1),
                               force = unpacked_rows(data["force"], 1);
        const std::vector<int> contacts = unpacked(data["contacts"]);
        REQUIRE(travel.size() == r.states.size());
        REQUIRE(force.size() == r.states.size());
        std::size_t at = 0;
        for (std::size_t s = 0; s < r.states.size(); ++s) {
            CHECK(std::abs(travel[s] * 0.0001 - r.states[s].travel) <= 0.0000501);
            CHECK(std::abs(force[s] - r.states[s].punch_force * ran.c.width) <= 0.501);
            REQUIRE(contacts.at(at++) == static_cast<int>(r.states[s].contacts.size()));
            for (const stroke::ContactForce& c : r.states[s].contacts) {
                CHECK(contacts.at(at) == c.tool);
                CHECK(std::abs(contacts.at(at + 1) * 0.005 - c.at.x()) <= 0.00251);
                CHECK(std::abs(contacts.at(at + 4) * 0.1 - c.force.y()) <= 0.0501);
                at += 5;
            }
        }
        CHECK(at == contacts.size());
        REQUIRE(data["tools"].size() == r.tools.size());
        for (std::size_t k = 0; k < r.tools.size(); ++k) {
            const nlohmann::json& tool = data["tools"][k];
            CHECK(tool["ram"] == r.tools[k].moves_with_ram());
            CHECK(tool.contains("compression") == r.tools[k].spring.has_value());
            if (!r.tools[k].spring) continue;
            const std::vector<int> pressed = unpacked_rows(tool["compression"], 1);
            double most = 0.0;
            for (std::size_t s = 0; s < r.states.size(); ++s) {
                CHECK(std::abs(pressed[s] * 0.0001 - r.states[s].compression[k]) <= 0.0000501);
                most = std::max(most, r.states[s].compression[k]);
            }
            CHECK(most > 1.0);  // the pad was pressed down, or there is nothing to compare
        }
    });
}

TEST_CASE("data: bend angles, at the stop and free those of the results") {
    for_every_stroke([](const RanJob& ran, const job::StepResult& step, const nlohmann::json& data) {
        const int loaded = data["loaded"];
        REQUIRE(data["bends"].size() == step.bends.size());
        for (std::size_t b = 0; b < step.bends.size(); ++b) {
            const nlohmann::json& bend = data["bends"][b];
            const std::vector<int> rows = unpacked_rows(bend["rows"], 5);
            const double at_stop = rows[5 * static_cast<std::size_t>(loaded)] * 0.01;
            const double at_end = rows[rows.size() - 5] * 0.01;
            const double sign = step.stroke.free.face_down ? -1.0 : 1.0;
            CHECK(bend["name"] == ran.c.part.bends[step.bends[b].bend].name);
            CHECK(std::abs(at_stop - sign * step.bends[b].loaded / degree) <= 0.00501);
            CHECK(std::abs(at_end - sign * step.bends[b].free / degree) <= 0.00501);
            CHECK(bend["loaded"].get<int>() == rows[5 * static_cast<std::size_t>(loaded)]);
            CHECK(std::abs(at_stop) > 20.0);
        }
    });
}

TEST_CASE("data: least clearance of every state") {
    for_every_stroke([](const RanJob&, const job::StepResult& step, const nlohmann::json& data) {
        const std::vector<int> rows = unpacked_rows(data["clearance"], 6);
        REQUIRE(rows.size() == 6 * step.clearance.size());
        for (std::size_t s = 0; s < step.clearance.size(); ++s) {
            const clearance::Closest& c = step.clearance[s];
            CHECK(rows[6 * s + 5] == c.tool);
            if (c.tool >= 0) CHECK(std::abs(rows[6 * s] * 0.005 - c.distance) <= 0.00251);
            if (c.tool < 0) CHECK(rows[6 * s] == 1 << 20);
        }
    });
}

TEST_CASE("data: the player's instants run from placed to free and only forwards in time") {
    for_every_stroke([](const RanJob&, const job::StepResult& step, const nlohmann::json& data) {
        const std::vector<int> rows = unpacked_rows(data["pace"]["keys"], 3);
        REQUIRE(rows.size() % 3 == 0);
        for (std::size_t i = 3; i < rows.size(); i += 3) {
            CHECK(rows[i] >= rows[i - 3]);
            CHECK(rows[i + 1] >= rows[i - 2]);
        }
        CHECK(rows[0] == 0);
        CHECK(rows[1] == 0);
        CHECK(rows[2] < 0);  // the punch is up
        CHECK(rows[rows.size() - 2] == 1000 * (static_cast<int>(step.stroke.recording.states.size()) - 1));
        CHECK(rows[rows.size() - 1] == rows[2]);
        std::vector<std::string> names;
        for (const nlohmann::json& p : data["pace"]["passages"]) names.push_back(p["name"]);
        CHECK(names == std::vector<std::string>{"Place", "Approach", "Press", "Dwell", "Retract", "Free"});
    });
}

TEST_CASE("data: a tool's outline is closed, and its arcs turn the way they should") {
    tool::VeeDie die;
    die.faces = {{84.0 * degree, 8.0, 1.0, 0.0}};
    die.width = 20.0, die.height = 20.0;
    const std::string path = report::outline_path(tool::make_outline(die, 1));
    CHECK(path.front() == 'M');
    CHECK(path.back() == 'Z');
    // Both shoulders are convex: counter-clockwise with y up, sweep flag 0 with y down.
    std::size_t arcs = 0;
    for (std::size_t at = path.find('A'); at != std::string::npos; at = path.find('A', at + 1)) {
        CHECK(path.compare(at, 10, "A1 1 0 0 0") == 0);
        ++arcs;
    }
    CHECK(arcs == 2);
}

TEST_CASE("data: text in a script element ends nothing") {
    const std::string text = report::in_script({{"name", "</script><!-- \u2028"}});
    CHECK(text.find('<') == std::string::npos);
    CHECK(nlohmann::json::parse(text)["name"] == "</script><!-- \u2028");
}
