#include "scenes/job/coil/sample_bend.h"

#include <algorithm>
#include <future>
#include <thread>

#include "scenes/job/run/strip_bends.h"
#include "sim/errors.h"
#include "sim/plan/shop_rules.h"
#include "sim/units.h"

namespace overbend::job {

namespace {

SampleBend bend_one(material::Card card, const tensile::LawFit& fit, double thickness) {
    SampleBend sample;
    sample.law = fit.law;
    if (fit.residual >= 1e300) {
        sample.why = "the law is not fitted";
        return sample;
    }
    VeeBend bend;
    card.hardening = fit.hardening;
    bend.material = card;
    bend.thickness = thickness;
    bend.die_opening = sample_opening * thickness;
    bend.shoulder_radius = bend.nose_radius = thickness;
    stroke::Stop stop;
    stop.kind = stroke::StopKind::free_angle;
    stop.value = 90.0 * degree;
    stroke::StrokeOptions options;
    options.record = false;
    try {
        const VeeResult r = bend_vee(bend, stop, options);
        sample.solved = r.stroke.outcome == stroke::Outcome::reached;
        if (!sample.solved) sample.why = stroke::outcome_words(r.stroke.outcome);
        sample.springback = r.springback();
        sample.inside_radius = r.inside_radius_free;
        sample.force = r.stroke.peak_force;
        sample.outer_strain = plan::outer_strain(card, thickness, r.inside_radius_loaded, 1.0);
    } catch (const NotSolved& error) {
        sample.why = error.what();
    }
    return sample;
}

}  // namespace

std::vector<SampleBend> bend_samples(const material::Card& card, const std::vector<tensile::LawFit>& fits,
                                     double thickness) {
    std::vector<SampleBend> samples(fits.size());
    const std::size_t cores = std::max(1u, std::thread::hardware_concurrency());
    for (std::size_t from = 0; from < fits.size(); from += cores) {
        std::vector<std::future<SampleBend>> running;
        for (std::size_t i = from; i < std::min(fits.size(), from + cores); ++i)
            running.push_back(
                std::async(std::launch::async, [&, i] { return bend_one(card, fits[i], thickness); }));
        for (std::size_t i = 0; i < running.size(); ++i) samples[from + i] = running[i].get();
    }
    return samples;
}

LawSpread springback_spread(const std::vector<SampleBend>& bends, const std::vector<tensile::LawFit>& fits,
                            const tensile::LawFit& chosen) {
    LawSpread spread;
    double best = chosen.residual;
    for (const tensile::LawFit& f : fits)
        if (f.law != tensile::Law::table) best = std::min(best, f.residual);
    for (std::size_t i = 0; i < bends.size(); ++i) {
        const bool counts =
            fits[i].law == chosen.law || fits[i].law == tensile::Law::table || fits[i].residual <= 1.5 * best;
        if (!bends[i].solved || !counts) continue;
        const double s = bends[i].springback;
        spread.least = spread.laws == 0 ? s : std::min(spread.least, s);
        spread.most = spread.laws == 0 ? s : std::max(spread.most, s);
        ++spread.laws;
    }
    return spread;
}

}  // namespace overbend::job
