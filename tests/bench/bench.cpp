// What the kernel costs: one V bend of some 85 nodes and 11 layers to 90 degrees free, and the demo's six
// strokes without pictures; the plan of a part of 8 bends, and the search alone for one of 12; the stage of
// each stroke as a picture. Counts first, which do not depend on the machine; then the least of several
// times. Parts alone: bench plan, search, bend, demo, stage, as many as are named.

#include <algorithm>
#include <chrono>
#include <cstdio>
#include <memory>
#include <string>
#include <vector>

#include "render/picture/painter.h"
#include "render/picture/stage.h"
#include "scenes/files/case/read_card.h"
#include "scenes/files/case/read_case.h"
#include "scenes/job/plan/attempt.h"
#include "scenes/job/plan/plan.h"
#include "scenes/job/run/process.h"
#include "scenes/job/run/strip_bends.h"
#include "sim/units.h"

using namespace overbend;

namespace {

template <class Work>
double least_ms(int times, Work work) {
    double least = 1e300;
    for (int i = 0; i < times; ++i) {
        const auto begin = std::chrono::steady_clock::now();
        work();
        least = std::min(
            least,
            std::chrono::duration<double, std::milli>(std::chrono::steady_clock::now() - begin).count());
    }
    return least;
}

// Cranked strips with long flats: every order goes for most of their bends, so that the search has much to
// look at.
files::Case cranked(int bends) {
    files::Case c;
    c.title = "cranked strip";
    c.material = files::read_card("dc01", ".");
    c.thickness = 1.0;
    c.width = 20.0;
    for (int i = 0; i <= bends; ++i) c.part.flats.push_back(18.0 + 4.0 * (i % 3));
    for (int i = 0; i < bends; ++i)
        c.part.bends.push_back(
            {"bend " + std::to_string(i + 1), (i % 2 ? -1.0 : 1.0) * (i % 3 ? 60.0 : 90.0) * degree, 1.1});
    c.part.angle_tolerance = degree;
    c.tools = {{"wedge", tool::VeePunch{50.0 * degree, 1.0, 60.0, 12.0}},
               {"blade", tool::VeePunch{30.0 * degree, 1.0, 80.0, 8.0}},
               {"block",
                tool::VeeDie{{{84.0 * degree, 8.0, 1.0, 0.4}, {84.0 * degree, 10.0, 1.0, 0.4}}, 30.0, 40.0}}};
    return c;
}

void time_plan() {
    const files::Case eight = cranked(8);
    job::PlanResult plan;
    const double plan_ms = least_ms(3, [&] { plan = job::plan_case(eight, {}); });
    std::printf("plan of 8 bends: %s, %d runs, %ld strokes by rule, %.0f ms\n", plan.found ? "found" : "none",
                plan.fit.runs, plan.asked, plan_ms);
}

void time_search() {
    const files::Case twelve = cranked(12);
    std::unique_ptr<job::Attempt> attempt;
    const double search_ms = least_ms(5, [&] { attempt = job::search_with(twelve, {5}); });
    std::printf("search of 12 bends: %zu orders, %d ways, %d sets, %ld strokes by rule, %.0f ms\n",
                attempt->search.best.size(), attempt->ways->count(), attempt->search.sets,
                attempt->search.asked, search_ms);
}

// One core, a picture of 1920 x 1080 without and with its magnifier: the list, the pixels, the PNG. The words
// that are the same from picture to picture are kept, as in a film.
void time_painting(const files::Case& c, const job::JobResult& job) {
    const picture::PictureSize size{1920, 1080};
    for (const picture::Lens lens : {picture::Lens::hidden, picture::Lens::shown}) {
        double list_ms = 0.0, paint_ms = 0.0, png_ms = 0.0;
        int pictures = 0;
        for (size_t i = 0; i < job.steps.size(); ++i) {
            const stroke::Recording& recording = job.steps[i].stroke.recording;
            picture::StageInfo info;
            info.strip_width = c.width;
            info.lens = lens;
            for (const int b : c.steps[i].bends)
                info.bends.push_back({c.part.bends[b].name, job.blank.bend_line[b], 0.0, {}, {}, 0.0});
            const picture::View view = picture::choose_view(recording, size, info);
            picture::Pixels pixels;
            for (double at = 0.0; at < static_cast<double>(recording.states.size()) - 1.0; at += 3.7) {
                picture::DrawingList list;
                list_ms += least_ms(3, [&] { list = draw_stage(recording, at, info, size, view); });
                paint_ms += least_ms(3, [&] { paint(list, pixels); });
                png_ms += least_ms(3, [&] { png_bytes(pixels); });
                ++pictures;
            }
        }
        std::printf(
            "stage of the demo at 1920 x 1080%s: %d pictures, list %.1f ms, pixels %.1f ms, PNG %.1f ms "
            "each\n",
            lens == picture::Lens::shown ? " with magnifier" : "", pictures, list_ms / pictures,
            paint_ms / pictures, png_ms / pictures);
    }
}

void time_bend() {
    job::VeeBend bend;
    bend.material = files::read_card("dc01", ".");
    bend.layers = 11;
    bend.elements_per_thickness = 10.0;
    stroke::Stop stop{stroke::StopKind::free_angle, 0.5 * pi};
    job::VeeResult vee;
    const double vee_ms = least_ms(7, [&] { vee = job::bend_vee(bend, stop, {}); });
    std::printf("V bend: %d nodes, %d increments, %d iterations, %.1f ms\n", vee.stroke.free.nodes(),
                vee.stroke.increments, vee.stroke.iterations, vee_ms);
}

void time_demo() {
    const files::Case c = files::read_case("cases/cable-hook/case.toml");
    job::JobResult job;
    const double job_ms = least_ms(3, [&] { job = job::run_process(c, {}); });
    int increments = 0, iterations = 0;
    for (const job::StepResult& s : job.steps)
        increments += s.stroke.increments, iterations += s.stroke.iterations;
    std::printf("demo: %d nodes, %zu strokes, %d increments, %d iterations, %.0f ms\n",
                job.steps.front().stroke.free.nodes(), job.steps.size(), increments, iterations, job_ms);
}

void time_stage() {
    const files::Case c = files::read_case("cases/cable-hook/case.toml");
    time_painting(c, job::run_process(c, {}));
}

struct Part {
    const char* name;
    void (*time)();
};
constexpr Part parts[] = {{"plan", time_plan},
                          {"search", time_search},
                          {"bend", time_bend},
                          {"demo", time_demo},
                          {"stage", time_stage}};

}  // namespace

int main(int count, char** words) {
    const std::vector<std::string> wanted(words + 1, words + count);
    for (const std::string& name : wanted)
        if (std::none_of(std::begin(parts), std::end(parts), [&](const Part& p) { return name == p.name; })) {
            std::fprintf(stderr, "bench: there is no part \"%s\"; parts: plan, search, bend, demo, stage\n",
                         name.c_str());
            return 2;
        }
    for (const Part& part : parts)
        if (wanted.empty() || std::find(wanted.begin(), wanted.end(), part.name) != wanted.end()) part.time();
    return 0;
}
