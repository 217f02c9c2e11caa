// What the strokes do to the tools, read off their recordings.

#include <algorithm>
#include <cmath>
#include <map>
#include <utility>

#include "scenes/files/case/tool_outline.h"
#include "scenes/job/shop/shop_parts.h"
#include "sim/errors.h"
#include "sim/material/flow_curve.h"
#include "sim/words.h"

namespace overbend::job {

namespace {

using shop::Verdict;
using stroke::State;

constexpr int states_looked_at = 12;      // of a stroke, beside the hardest
constexpr double worth_a_look = 0.5;      // of the hardest, on that tool
constexpr double rated_full = 0.8;        // of what a tool is rated for, as of a press
constexpr double steel_density = 7850.0;  // kg/m3, of tools whose steel is not given
constexpr double bent_strain = 0.2;       // at which the strip's flow stress is taken

// Two-faced dies have another outline for each face.
using SectionsOf = std::map<std::pair<int, int>, std::optional<shop::ToolSections>>;

shop::HeldBy held_by(tool::Role role) {
    return role == tool::Role::punch || role == tool::Role::clamp ? shop::HeldBy::top : shop::HeldBy::bottom;
}

const std::optional<shop::ToolSections>& sections(SectionsOf& known, const files::Case& c, int tool, int face,
                                                  tool::Role role, std::vector<std::string>& not_checked) {
    const auto [place, fresh] = known.try_emplace({tool, face});
    if (!fresh) return place->second;
    try {
        place->second = shop::sections_of(files::tool_outline(c.tools[tool], face), held_by(role));
    } catch (const OutOfRange& error) {
        not_checked.push_back("sections of the tool '" + c.tools[tool].name + "': " + error.wrong);
    }
    return place->second;
}

double total(const State& s, int k) {
    double sum = 0.0;
    for (const stroke::ContactForce& f : s.contacts)
        if (f.tool == k) sum += f.force.norm();
    return sum;
}

std::vector<shop::ToolForce> forces_on(const stroke::Recording& r, const State& s, int k) {
    std::vector<shop::ToolForce> forces;
    for (const stroke::ContactForce& f : s.contacts)
        if (f.tool == k) forces.push_back({f.at - stroke::tool_position(r.tools, k, s), -f.force});
    return forces;
}

// The hardest state of a tool, and some others that press it hard.
std::vector<const State*> hard_states(const stroke::Recording& r, int k) {
    std::vector<std::pair<double, const State*>> all;
    double most = 0.0;
    for (const State& s : r.states) {
        const double force = total(s, k);
        most = std::max(most, force);
        if (force > 0.0) all.emplace_back(force, &s);
    }
    std::stable_sort(all.begin(), all.end(), [](const auto& a, const auto& b) { return a.first > b.first; });
    while (!all.empty() && all.back().first < worth_a_look * most) all.pop_back();
    std::vector<const State*> picked;
    const std::size_t stride = std::max<std::size_t>(1, all.size() / states_looked_at);
    for (std::size_t i = 0; i < all.size(); i += stride) picked.push_back(all[i].second);
    return picked;
}

// What a tool without a steel is looked at with: the stress that is greatest counts.
shop::Allowable limits_of(const files::Tool& tool) {
    return tool.make.card ? shop::allowables(*tool.make.card) : shop::Allowable{1.0, 1.0, 1.0};
}

// Of the strip as it is bent, or its strength where the card's curve stays below.
double strip_flow_stress(const material::Card& card) {
    const double bent = material::flow_point(card.hardening, card.youngs_modulus, bent_strain).stress;
    return std::max(bent, card.tensile_strength);
}

// The convex arc of the outline that a force acts on; 0: a flat face, an inner or a sharp corner.
double edge_radius(const tool::ArcOutline& outline, const tool::Vec2& at) {
    double nearest = 1e300, radius = 0.0;
    for (const tool::Piece& piece : outline.pieces()) {
        double distance = 0.0;
        if (piece.is_arc()) {
            const tool::Vec2 out = at - piece.centre;
            const bool within = out.normalized().dot(piece.direction) >= piece.cos_half_sweep - 1e-3;
            distance = within ? std::abs(out.norm() - piece.radius)
                              : std::min((at - piece.start).norm(), (at - piece.end).norm());
        } else {
            const tool::Vec2 edge = piece.end - piece.start;
            const double share = std::clamp((at - piece.start).dot(edge) / edge.squaredNorm(), 0.0, 1.0);
            distance = (at - piece.start - share * edge).norm();
        }
        if (distance >= nearest) continue;
        nearest = distance;
        radius = piece.is_arc() && piece.sweep > 0.0 ? piece.radius : 0.0;
    }
    return radius;
}

void look_at_contacts(const files::Case& c, const tool::ArcOutline& outline,
                      const std::vector<shop::ToolForce>& forces, int step, ToolInShop& t) {
    const files::Tool& tool = c.tools[t.tool];
    const shop::ToolSteel steel = tool.make.card.value_or(shop::ToolSteel{});
    const double modulus = shop::contact_modulus({steel.youngs_modulus, steel.poisson},
                                                 {c.material.youngs_modulus, c.material.poisson});
    for (const shop::ToolForce& f : forces) {
        const double radius = edge_radius(outline, f.at), force = f.force.norm();
        if (radius <= 0.0) continue;
        const shop::LineContact contact =
            shop::line_contact(force, modulus, radius, strip_flow_stress(c.material));
        const bool more = !t.contact || contact.pressure > t.contact->contact.pressure ||
                          (contact.pressure == t.contact->contact.pressure && force > t.contact->force);
        if (more) t.contact = WorstContact{contact, force, radius, f.at, step};
    }
}

// One tool in one stroke. k: its place among the recording's.
void look_at_stroke(const files::Case& c, const JobResult& job, int step, int k, SectionsOf& known,
                    ToolInShop& t, std::vector<std::string>& not_checked) {
    const stroke::Recording& r = job.steps[step].stroke.recording;
    const int face = face_up(c, c.steps[step], t.tool);
    const std::optional<shop::ToolSections>& cuts =
        sections(known, c, t.tool, face, r.tools[k].role, not_checked);
    const shop::Allowable limits = limits_of(c.tools[t.tool]);
    for (const State* s : hard_states(r, k)) {
        const std::vector<shop::ToolForce> forces = forces_on(r, *s, k);
        look_at_contacts(c, r.tools[k].outline, forces, step, t);
        double up = 0.0;
        for (const shop::ToolForce& f : forces) up += f.force.y();
        t.peak = std::max(t.peak, std::abs(up));
        if (!cuts) continue;
        const std::optional<shop::SectionLoad> load = shop::weakest_section(*cuts, forces, limits);
        if (!load || (t.section && load->share(limits) <= t.section->load.share(limits))) continue;
        t.section = WorstSection{*load, step, face, s->travel};
    }
}

std::string at_words(const tool::Vec2& at) {
    return words("x %.1f, y %.1f mm", at.x(), at.y());
}

void judge_section(const files::Case& c, const WorstSection& worst, ToolInShop& t) {
    const shop::ToolSteel& steel = *c.tools[t.tool].make.card;
    const shop::Allowable limits = shop::allowables(steel);
    const shop::SectionLoad& load = worst.load;
    const tool::Vec2 middle = 0.5 * (load.cut.from + load.cut.to);
    const std::string where = words("section %.1f mm thick about %s, stroke '%s'", load.cut.thickness,
                                    at_words(middle).c_str(), c.steps[worst.step].name.c_str());
    const char* const source = "beam theory";
    t.checks.push_back(
        {"tension", load.tension, steel.bending_strength, "MPa",
         shop::judged(load.tension, steel.bending_strength, 1.0 / steel.safety_tension),
         words("%s: tension %.0f MPa, allowed %.0f (%.0f with a safety factor of %g)", where.c_str(),
               load.tension, limits.tension, steel.bending_strength, steel.safety_tension),
         source});
    t.checks.push_back(
        {"compression", load.compression, steel.compressive_yield, "MPa",
         shop::judged(load.compression, steel.compressive_yield, 1.0 / steel.safety_compression),
         words("%s: compression %.0f MPa, allowed %.0f (%.0f with a safety factor of %g)", where.c_str(),
               load.compression, limits.compression, steel.compressive_yield, steel.safety_compression),
         source});
    if (load.share(limits) > 1.0)
        t.mends.push_back(words("%s: remedy: make it at least %.1f mm thick", where.c_str(),
                                shop::thickness_that_bears(load, limits)));
}

void judge_contact(const files::Case& c, const WorstContact& worst, ToolInShop& t) {
    const shop::ToolSteel& steel = *c.tools[t.tool].make.card;
    const shop::Allowable limits = shop::allowables(steel);
    const double strength = limits.contact * steel.safety_compression;
    const std::string where = words("edge of radius %g mm at %s, stroke '%s'", worst.radius,
                                    at_words(worst.at).c_str(), c.steps[worst.step].name.c_str());
    t.checks.push_back(
        {"contact", worst.contact.pressure, strength, "MPa",
         shop::judged(worst.contact.pressure, strength, 1.0 / steel.safety_compression),
         words("%s: contact pressure %.0f MPa%s, allowed %.0f", where.c_str(), worst.contact.pressure,
               worst.contact.capped ? " (limited by the yield of the strip)" : "", limits.contact),
         "Hertz, line contact; Johnson, Contact Mechanics"});
    if (worst.contact.pressure <= limits.contact) return;
    const double modulus = shop::contact_modulus({steel.youngs_modulus, steel.poisson},
                                                 {c.material.youngs_modulus, c.material.poisson});
    t.mends.push_back(words("%s: remedy: a radius of at least %.1f mm, or a harder steel", where.c_str(),
                            shop::radius_for_pressure(worst.force, modulus, limits.contact)));
}

void judge(const files::Case& c, ToolInShop& t) {
    const files::Tool& tool = c.tools[t.tool];
    if (tool.make.rating)
        t.checks.push_back(
            {"rating", t.peak, *tool.make.rating, "kN/m", shop::judged(t.peak, *tool.make.rating, rated_full),
             words("%.0f kN per metre, rated at %g kN/m", t.peak, *tool.make.rating), "its maker"});
    if (!tool.make.card) return;
    if (t.section) judge_section(c, *t.section, t);
    if (t.contact) judge_contact(c, *t.contact, t);
}

double compression_in(const JobResult& job, int step, int k) {
    double most = 0.0;
    for (const State& s : job.steps[step].stroke.recording.states)
        if (k < static_cast<int>(s.compression.size())) most = std::max(most, s.compression[k]);
    return most;
}

// Tools of a step with their places among the recording's.
std::vector<std::pair<int, int>> tools_of_step(const files::Step& step) {
    std::vector<std::pair<int, int>> tools = {{step.punch, 0}, {step.die, 1}};
    int k = 2;
    if (step.pad) tools.emplace_back(*step.pad, k++);
    if (step.clamp) tools.emplace_back(*step.clamp, k);
    return tools;
}

}  // namespace

int face_up(const files::Case& c, const files::Step& step, int tool) {
    return tool == step.die && std::holds_alternative<tool::VeeDie>(c.tools[tool].shape) ? step.die_face : 1;
}

std::vector<ToolInShop> tools_in_shop(const files::Case& c, const JobResult& job,
                                      const shop::MakingRates& rates, std::vector<std::string>& not_checked) {
    std::map<int, ToolInShop> found;  // in the order of the case
    std::map<int, double> compression;
    SectionsOf known;
    for (int i = 0; i < static_cast<int>(job.steps.size()); ++i) {
        if (!job.steps[i].stroke.solved()) continue;
        for (const auto& [tool, k] : tools_of_step(c.steps[i])) {
            ToolInShop& t = found[tool];
            t.tool = tool;
            t.steps.push_back(i);
            look_at_stroke(c, job, i, k, known, t, not_checked);
            compression[tool] = std::max(compression[tool], compression_in(job, i, k));
        }
    }
    std::vector<ToolInShop> tools;
    for (auto& [index, t] : found) {
        const files::Tool& tool = c.tools[index];
        t.made = !tool.make.price;
        t.length = tool_length(c, tool);
        const double density = tool.make.card ? tool.make.card->density : steel_density;
        t.stock = shop::stock_of(files::tool_outline(tool, 1), t.length, density, rates);
        judge(c, t);
        t.springs = spring_advice(c, tool, compression[index], t.checks, t.mends);
        tools.push_back(t);
    }
    return tools;
}

std::optional<double> steel_margin(const files::Case& c, const ToolInShop& tool) {
    const std::optional<shop::ToolSteel>& card = c.tools[tool.tool].make.card;
    if (!card) return std::nullopt;
    const shop::Allowable limits = shop::allowables(*card);
    double share = 0.0;
    if (tool.section) share = tool.section->load.share(limits);
    if (tool.contact) share = std::max(share, tool.contact->contact.pressure / limits.contact);
    return share > 0.0 ? std::optional<double>(1.0 / share) : std::nullopt;
}

}  // namespace overbend::job
