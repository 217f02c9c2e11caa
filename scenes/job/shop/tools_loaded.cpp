// What the strokes do to the tools, read off their recordings.

#include <algorithm>
#include <cmath>
#include <map>
#include <utility>

#include "scenes/files/case/tool_outline.h"
#include "scenes/job/shop/shop_parts.h"
#include "sim/errors.h"
#include "sim/material/flow_curve.h"
#include "sim/units.h"

namespace overbend::job {

namespace {

using stroke::State;

constexpr double rated_full = 0.8;        // of what a tool is rated for, as of a press
constexpr double steel_density = 7850.0;  // kg/m3, of tools whose steel is not given
constexpr double bent_strain = 0.2;       // at which the strip's flow stress is taken

// Two-faced dies have another outline for each face.
using SectionsOf = std::map<std::pair<int, int>, std::optional<shop::ToolSections>>;

shop::HeldBy held_by(tool::Role role) {
    return role == tool::Role::punch || role == tool::Role::clamp ? shop::HeldBy::top : shop::HeldBy::bottom;
}

const std::optional<shop::ToolSections>& sections(SectionsOf& known, const files::Case& c, int tool, int face,
                                                  tool::Role role, Findings& findings) {
    const auto [place, fresh] = known.try_emplace({tool, face});
    if (!fresh) return place->second;
    try {
        place->second = shop::sections_of(files::tool_outline(c.tools[tool], face), held_by(role));
    } catch (const OutOfRange& error) {
        findings.push_back(
            {Severity::not_checked, Rule::tool_sections, 0.0, 0.0, {}, error.wrong, on_tool(tool)});
    }
    return place->second;
}

std::vector<shop::ToolForce> forces_on(const stroke::Recording& r, const State& s, int k) {
    std::vector<shop::ToolForce> forces;
    for (const stroke::ContactForce& f : s.contacts)
        if (f.tool == k) forces.push_back({f.at - stroke::tool_position(r.tools, k, s), -f.force});
    return forces;
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
        const bool more = !t.contact || contact.mean > t.contact->contact.mean ||
                          (contact.mean == t.contact->contact.mean && force > t.contact->force);
        if (more) t.contact = WorstContact{contact, force, radius, f.at, step};
    }
}

// What the ram pressed with at most, where the punch alone goes with it: of a recording that has only some of
// the stroke's states.
double peak_on_punch(const stroke::StrokeResult& stroke, int k) {
    const tool::ToolSet& tools = stroke.recording.tools;
    const bool alone = std::none_of(tools.begin(), tools.end(), [](const tool::RigidTool& t) {
        return t.role == tool::Role::clamp && t.moves_with_ram();
    });
    return tools[k].role == tool::Role::punch && alone ? stroke.peak_force : 0.0;
}

// One tool in one stroke: the worst of all its states. k: its place among the recording's.
void look_at_stroke(const files::Case& c, const JobResult& job, int step, int k, SectionsOf& known,
                    ToolInShop& t, Findings& findings) {
    const stroke::Recording& r = job.steps[step].stroke.recording;
    const int face = face_up(c, c.steps[step], t.tool);
    const std::optional<shop::ToolSections>& cuts =
        sections(known, c, t.tool, face, r.tools[k].role, findings);
    const shop::Allowable limits = limits_of(c.tools[t.tool]);
    const double ram = peak_on_punch(job.steps[step].stroke, k);
    if (ram > t.peak) t.peak = ram, t.peak_step = step;
    for (const State& s : r.states) {
        const std::vector<shop::ToolForce> forces = forces_on(r, s, k);
        if (forces.empty()) continue;
        look_at_contacts(c, r.tools[k].outline, forces, step, t);
        double up = 0.0;
        for (const shop::ToolForce& f : forces) up += f.force.y();
        if (std::abs(up) > t.peak) t.peak = std::abs(up), t.peak_step = step;
        if (!cuts) continue;
        const shop::HolderLoad held = shop::holder_load(*cuts, forces);
        if (!t.held ||
            held.pressed * std::abs(held.beside) > t.held->load.pressed * std::abs(t.held->load.beside))
            t.held = WorstHold{held, step, s.travel};
        const std::optional<shop::SectionLoad> load = shop::weakest_section(*cuts, forces, limits);
        if (!load || (t.section && load->share(limits) <= t.section->load.share(limits))) continue;
        t.section = WorstSection{*load, step, face, s.travel};
    }
}

void judge_section(const files::Case& c, const WorstSection& worst, ToolInShop& t) {
    const shop::ToolSteel& steel = *c.tools[t.tool].make.card;
    const shop::Allowable limits = shop::allowables(steel);
    const shop::SectionLoad& load = worst.load;
    const tool::Vec2 middle = 0.5 * (load.cut.from + load.cut.to);
    const std::vector<double> where = {load.cut.thickness, middle.x(), middle.y()};
    const double sufficient = shop::thickness_that_bears(load, limits);
    const auto check = [&](Rule rule, double stress, double strength, double allowed, double safety) {
        t.checks.push_back({judged(stress, strength, 1.0 / safety), rule, stress, strength, where});
        t.checks.back().further.insert(t.checks.back().further.end(), {allowed, safety, sufficient});
    };
    check(Rule::tool_tension, load.tension, steel.bending_strength, limits.tension, steel.safety_tension);
    check(Rule::tool_compression, load.compression, steel.compressive_yield, limits.compression,
          steel.safety_compression);
    if (load.share(limits) > 1.0)
        t.mends.push_back({Severity::caution, Rule::thicker_section, sufficient, load.cut.thickness, where});
}

// Only a dent is a problem: what wears the edge is the load per metre.
void judge_contact(const files::Case& c, const WorstContact& worst, ToolInShop& t) {
    const shop::ToolSteel& steel = *c.tools[t.tool].make.card;
    const double dents = shop::indentation_pressure(steel), pressure = worst.contact.mean;
    const double modulus = shop::contact_modulus({steel.youngs_modulus, steel.poisson},
                                                 {c.material.youngs_modulus, c.material.poisson});
    const double radius = shop::radius_for_pressure(worst.force, modulus, 4.0 / pi * dents);
    const std::vector<double> where = {
        worst.radius, worst.at.x(), worst.at.y(), steel.hardness, worst.contact.capped ? 1.0 : 0.0, radius};
    t.checks.push_back({judged(pressure, dents, 1.0), Rule::tool_contact, pressure, dents, where});
    if (pressure > dents)
        t.mends.push_back({Severity::caution, Rule::rounder_edge, radius, worst.radius, where});
}

void judge_load(const files::Tool& tool, ToolInShop& t) {
    if (tool.make.rating) {
        t.checks.push_back(
            {judged(t.peak, *tool.make.rating, rated_full), Rule::tool_rating, t.peak, *tool.make.rating});
    } else if (tool.make.card) {
        const double hardness = tool.make.card->hardness;
        const shop::LineLoad usual = shop::usual_line_load(hardness);
        t.checks.push_back({t.peak > usual.usual ? Severity::caution : Severity::within,
                            Rule::tool_line_load,
                            t.peak,
                            usual.usual,
                            {hardness, usual.least, usual.most}});
    }
}

// Each check at the stroke and the state that asks most.
void set_place(const JobResult& job, Rule rule, const ToolInShop& t, FindingPlace& place) {
    place.of = On::tool, place.tool = t.tool, place.step = t.steps.front();
    double travel = 1e300;
    if (rule == Rule::tool_contact || rule == Rule::rounder_edge) {
        place.step = t.contact->step;
    } else if (rule == Rule::tool_rating || rule == Rule::tool_line_load) {
        place.step = t.peak_step;
    } else if (rule == Rule::tilting) {
        place.step = t.held->step, travel = t.held->travel;
    } else if (t.section) {
        place.step = t.section->step, travel = t.section->travel;
    }
    place.state = state_at(job.steps[place.step].stroke.recording, travel);
}

void judge(const files::Case& c, const JobResult& job, double compression, ToolInShop& t) {
    const files::Tool& tool = c.tools[t.tool];
    judge_load(tool, t);
    if (tool.make.card && t.section) judge_section(c, *t.section, t);
    if (tool.make.card && t.contact) judge_contact(c, *t.contact, t);
    judge_holding(c, job, t);
    t.springs = spring_advice(c, t.tool, compression, t.checks, t.mends);
    for (Finding& f : t.checks) set_place(job, f.rule, t, f.place);
    for (Finding& f : t.mends) set_place(job, f.rule, t, f.place);
}

double compression_in(const JobResult& job, int step, int k) {
    double most = 0.0;
    for (const State& s : job.steps[step].stroke.recording.states)
        if (k < static_cast<int>(s.compression.size())) most = std::max(most, s.compression[k]);
    return most;
}

}  // namespace

int face_up(const files::Case& c, const files::Step& step, int tool) {
    return tool == step.die && std::holds_alternative<tool::VeeDie>(c.tools[tool].shape) ? step.die_face : 1;
}

std::vector<ToolInShop> tools_in_shop(const files::Case& c, const JobResult& job,
                                      const shop::MakingRates& rates, Findings& findings) {
    std::map<int, ToolInShop> found;  // in the order of the case
    std::map<int, double> compression;
    SectionsOf known;
    for (int i = 0; i < static_cast<int>(job.steps.size()); ++i) {
        if (!job.steps[i].stroke.solved()) continue;
        const std::vector<int> used = c.steps[i].tools();  // as the recording has them
        for (int k = 0; k < static_cast<int>(used.size()); ++k) {
            const int tool = used[k];
            ToolInShop& t = found[tool];
            t.tool = tool;
            t.steps.push_back(i);
            look_at_stroke(c, job, i, k, known, t, findings);
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
        judge(c, job, compression[index], t);
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
    if (tool.contact) share = std::max(share, tool.contact->contact.mean / limits.contact);
    return share > 0.0 ? std::optional<double>(1.0 / share) : std::nullopt;
}

}  // namespace overbend::job
