// A case that can be read, whatever the bytes: a drawing, tools and steps of sizes that may suit one another
// or not. It is refused, or run or planned to an end that is told; nothing that is measured is without a value.

#include <fuzzer/FuzzedDataProvider.h>

#include <cmath>
#include <cstddef>
#include <cstdint>
#include <cstdio>
#include <cstdlib>
#include <string>

#include "scenes/files/case/case_error.h"
#include "scenes/files/case/read_case.h"
#include "scenes/job/plan/plan.h"
#include "scenes/job/run/process.h"
#include "sim/errors.h"

using namespace overbend;

namespace {

struct Writer {
    FuzzedDataProvider choice;
    std::string text;

    void line(const char* words) { text += std::string(words) + '\n'; }
    template <class... Values>
    void line(const char* format, Values... values) {
        char words[300];
        std::snprintf(words, sizeof words, format, values...);
        line(words);
    }
    double size(double least, double most) {
        // By hundredths, as people write them.
        return std::round(100.0 * choice.ConsumeFloatingPointInRange(least, most)) / 100.0;
    }
};

// As many bends as were drawn.
int write_part(Writer& w, double t) {
    const int bends = w.choice.ConsumeIntegralInRange(1, 3);
    w.line("[part]\npath = [\n  { flat_mm = %g },", w.size(4.0 * t, 40.0 * t));
    for (int b = 0; b < bends; ++b) {
        const double angle = w.size(5.0, 150.0) * (w.choice.ConsumeBool() ? 1.0 : -1.0);
        w.line("  { bend_deg = %g, inside_radius_mm = %g, name = \"b%d\" },", angle, w.size(0.2 * t, 5.0 * t),
               b);
        w.line("  { flat_mm = %g },", w.size(2.0 * t, 40.0 * t));
    }
    w.line("]");
    return bends;
}

void write_vee(Writer& w, double t) {
    w.line("[[tool]]\nname = \"p\"\nkind = \"vee-punch\"\nangle_deg = %g\nnose_radius_mm = %g",
           w.size(20.0, 120.0), w.size(0.2 * t, 4.0 * t));
    if (w.choice.ConsumeBool())
        w.line(
            "[[tool]]\nname = \"d\"\nkind = \"open-die\"\nopening_mm = %g\nshoulder_radius_mm = %g\nwidth_mm "
            "= %g\n"
            "height_mm = 60",
            w.size(4.0 * t, 16.0 * t), w.size(0.3 * t, 4.0 * t), w.size(15.0 * t, 40.0 * t));
    else
        w.line("[[tool]]\nname = \"d\"\nkind = \"vee-die\"\nfaces = [ { angle_deg = %g, opening_mm = %g } ]",
               w.size(20.0, 140.0), w.size(4.0 * t, 16.0 * t));
}

void write_steps(Writer& w, int bends) {
    for (int b = 0; b < bends; ++b) {
        w.line("[[step]]\nname = \"s%d\"\nbends = [\"b%d\"]\npunch = \"p\"\ndie = \"d\"", b, b);
        w.line("place = { face = \"%s\", end = \"%s\" }", w.choice.ConsumeBool() ? "up" : "down",
               w.choice.ConsumeBool() ? "left" : "right");
        switch (w.choice.ConsumeIntegralInRange(0, 3)) {
            case 0:
                w.line("stop = { free_deg = %g }", w.size(5.0, 150.0));
                break;
            case 1:
                w.line("stop = { force_kN = %g }", w.size(0.1, 300.0));
                break;
            case 2:
                w.line("stop = { travel_mm = %g }", w.size(0.1, 20.0));
                break;
            default:
                break;
        }
    }
}

void must(bool holds) {
    if (!holds) std::abort();
}

void check_job(const job::JobResult& job) {
    for (const job::StepResult& step : job.steps) {
        must(std::isfinite(step.stroke.stop_travel) && std::isfinite(step.stroke.stop_force));
        must(step.stroke.solved() || !step.stroke.reason.empty());
        for (const job::BendResult& bend : step.bends)
            must(std::isfinite(bend.free) && std::isfinite(bend.loaded));
    }
    if (job.feasible()) must(job.solved);
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* bytes, std::size_t size) {
    static const char* const cards[] = {"dc01", "aluminium-5754-h22", "stainless-1.4301",
                                        "spring-steel-c75s"};
    Writer w{FuzzedDataProvider(bytes, size), "format = 1\n"};
    const double t = w.size(0.3, 4.0);
    w.line("[strip]\nmaterial = \"%s\"\nthickness_mm = %g\nwidth_mm = %g", w.choice.PickValueInArray(cards),
           t, w.size(5.0, 300.0));
    const int bends = write_part(w, t);
    const bool plan = w.choice.ConsumeIntegralInRange(0, 7) == 0;
    if (!plan) {
        write_vee(w, t);
        write_steps(w, bends);
    }
    w.line("[run]\nlayers = 5\nelements_per_thickness = 2\nfriction = %g", w.size(0.0, 0.3));
    try {
        const files::Case c =
            files::read_case_text(w.text, "fuzzed.toml", plan ? files::Needs::plan : files::Needs::steps);
        if (plan) {
            const job::PlanResult planned = job::plan_case(c, {});
            must(planned.found || !planned.reasons.empty());
            if (planned.found) check_job(planned.fit.job);
        } else {
            check_job(job::run_process(c, {}));
        }
    } catch (const files::CaseError&) {
    } catch (const OutOfRange&) {
    } catch (const NotSolved&) {
    }
    return 0;
}
