// Shop rules about a bend and what lies near it on the blank. Rules about tools: tool_rules.h.
//
// A rule has a finding or none. Most are cautions: they say where trouble is to be expected, not that a strip
// cannot be bent so.
//
// Units  mm, MPa, rad; strains logarithmic.

#pragma once

#include <optional>

#include "sim/finding.h"
#include "sim/material/card.h"
#include "sim/plan/least_radius.h"

namespace overbend::plan {

// "least inside radius": the radius below the table's, see least_radius.h, by more than the tolerance that
// such a radius has when it is drawn (0.2 mm or 15 per cent): what is drawn as the table allows may come out
// so.
std::optional<Finding> too_sharp(double inside_radius, const LeastRadius& least);
// The least that raises no alarm.
double allowed_radius(const LeastRadius& least);

// Strain of the convex surface of a strip bent by a moment alone to this inside radius.
// thickness > 0; inside_radius >= 0 (below a twentieth of the thickness, a twentieth: a sharper strip folds);
// hold of the width, see sim/material/layer_law.h. Throws NotSolved.
double outer_strain(const material::Card& card, double thickness, double inside_radius, double hold);

// "outer-fibre strain": beyond what bending is known to bear, both as engineering strains; more than twice it
// stops the job. The limit is
//   with the card's reduction of area Z   Z / (1 - Z), the condition behind R/T = 50/Z - 1 (Kalpakjian and
//                                         Schmid, chapter 16, from memory)
//   else, with a least radius             the strain of the sharpest radius that raises no alarm; what is
//                                         between it and its double is said of the radius alone
struct StrainLimit {
    double strain = 0.0;  // engineering
    bool by_area = false;
};
// Throws NotSolved. None: neither is known.
std::optional<StrainLimit> strain_limit(const material::Card& card, double thickness, double hold,
                                        const std::optional<LeastRadius>& least);
std::optional<Finding> overstrained(double outer_log_strain, const StrainLimit& limit);

// "hole to bend": x >= r + 1.5 s, or the hole is pulled out of shape. A slot whose long side runs along the
// bend line is weaker than a hole: r + 2 s up to 25 mm of it, r + 2.5 s up to 50 mm, r + 3 s beyond.
//
// Source  text of a lecture on design for bending in a public repository, which does not say from where x is
//         measured. Here x lies on the blank, from the cut-out's nearest edge to where the bend begins, the
//         stricter reading; below 0 the cut-out reaches into the bend. Of slots: common practice, from
//         memory.
// side_along  mm of straight side that runs along the bend line; 0: a hole, or a slot across the bend line
std::optional<Finding> too_near(double edge_to_bend, double inside_radius, double thickness,
                                double side_along = 0.0);
double least_hole_distance(double inside_radius, double thickness, double side_along = 0.0);

// "web to the edge": between a cut-out and an edge of the blank one thickness is left at least, or the web
// bulges as it is cut and tears as it is bent. web: below 0 the cut-out is open at the edge.
// Source  common practice, no source.
enum class BlankEdge { along, end };  // along the strip's length; an end of the blank
std::optional<Finding> thin_web(double web, BlankEdge edge, double thickness);

// "least hole": a hole's diameter, or a slot's width, of one thickness at least. Below that a punch breaks
// and a laser cuts slowly: a note. Below half of it a laser burns it out of shape too: a caution. Source
// common practice, no source.
std::optional<Finding> small_hole(double diameter, double thickness);

// "die opening": V = 6 s up to 2.5 mm, 8 s up to 8, 10 s up to 10, 12 s beyond; a caution below two thirds of
// it and above twice it.
//
// Source  common practice, seen in public text, no standard behind it; its steps at 2.5 to 3 and at 8 to 9 mm
//         are closed here with the smaller factor. The band is ours: below 2/3 of it (4 s for thin strip)
//         the nose of a usual punch does not fit and the force doubles; above twice it (12 s) flanges
//         get long, and springback and the scatter of the angle large.
std::optional<Finding> odd_opening(double die_opening, double thickness);
double usual_opening(double thickness);

// "least flange": a leg of at least 0.7 V, measured on the outside as DIN 6935 does.
// Source  common practice, from memory.
std::optional<Finding> short_flange(double outside_leg, double die_opening);

}  // namespace overbend::plan
