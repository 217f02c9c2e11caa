// Reads a case file (TOML). Its keys, with their ranges, and in brackets what holds when they are left out:
//
//   format = 1, title
//   rack = name of a rack of tools or .toml file (none): its tools stand before the case's own, see below
//   [strip]   material = name of a card or .toml file (or a table [material] instead, see below),
//             thickness_mm 0.05 to 20, width_mm 0.5 to 5000, blank_length_mm (worked out),
//             bend_lines_mm = [ ... ] from the blank's left end, one a bend (worked out; with them
//             blank_length_mm is required),
//             rolling = "lengthwise" or "crosswise" ("lengthwise": the strip's length along the rolling
//             direction, its bend lines across)
//   [part]    path = [ { flat_mm }, { bend_deg, inside_radius_mm, name ("bend 1" ...) }, { flat_mm } ... ]
//             A flat may be given as { outside_mm }, the leg measured on the outside as DIN 6935 does: at an
//             end with a bend to the outer tangent (r + s beyond the flat) for 90 degrees and more, a hem's
//             crown among them, to the outer corner ((r + s) tan(angle / 2)) for less; at the strip's ends
//             to the end
//             bend_deg from -180 to 180, not 0, positive turns the right-hand side up; 180 is a hem
//             angle_tolerance_deg (1)
//             cutouts = [ { at_mm, across_mm, hole_mm or slot_mm = [length, width] } ... ] (none)
//             at and across: to the middle, from the left end and the lower edge of the blank
//   [[tool]]  name, kind, and by kind, as in sim/tool/punch.h and die.h:
//     vee-punch      angle_deg, nose_radius_mm, height_mm (60), shank_width_mm (12, or more for a large
//                    nose), relief = { side = "left" or "right", from_mm, to_mm, set_back_mm, neck_mm,
//                    root_radius_mm (0) } (none): room for a return flange. from and to: above the nose;
//                    set_back: of its face past the punch's axis, negative short of it
//     vee-die        faces = one or two of { angle_deg, opening_mm, shoulder_radius_mm (1),
//                    bottom_radius_mm (0.4) }, width_mm (opening + 4 shoulder radii + 16),
//                    height_mm (1.5 times the depth of its grooves + 25)
//     open-die       opening_mm, shoulder_radius_mm, depth_mm (2 openings), width_mm (as above)
//     offset-punch   offset_mm, angle_deg, nose_radius_mm, root_radius_mm (0.5), clearance_mm,
//                    land_mm (15), height_mm (50)
//     offset-die     offset_mm, angle_deg, shoulder_radius_mm, root_radius_mm (0.5), land_mm (15),
//                    height_mm (40)
//     channel-punch  width_mm, corner_radius_mm, side_relief_deg (0), foot_height_mm, shank_width_mm (as
//                    the top of the foot), shank = "middle", "left" or "right" ("middle"), height_mm (60)
//     channel-die    opening_mm, shoulder_radius_mm, depth_mm, floor_crown_mm (0),
//                    width_mm (opening + 30, or as above if that is more), height_mm (depth + 20)
//     flat-punch, flat-die   width_mm, corner_radius_mm (0), height_mm (40): they lay a hem
//     wiping-punch   width_mm, corner_radius_mm (0), clearance_mm from the die's wall, height_mm (60)
//     wiping-die     width_mm, edge_radius_mm of its right edge, height_mm (60)
//     pad, clamp     width_mm, corner_radius_mm (0), height_mm (15), and of a pad always, of a clamp unless
//                    it is firm: spring = { preload_N_per_mm (0), rate_N_per_mm2 (0), travel_mm (no limit) },
//                    per mm of the strip's width, not both 0; or one or more wound springs, of which the
//                    strip's width takes its share: spring = { wire_mm, coil_mm (mean diameter), turns,
//                    shear_modulus_MPa, count (1), preload_N (0) of all together, travel_mm (no limit) }
//     outline        points = [ { x_mm, y_mm, radius_mm (0), bulge (0) } ... ], or file = path of a DXF
//                    drawing in mm whose lines, arcs, circles and polylines make one closed outline, with
//                    layer (all), gap_mm (0.01) up to which gaps are closed, origin_mm = [x, y] of the tool's
//                    origin in the drawing ([0, 0]), turn_deg (0) counter-clockwise about it
//   [[step]]  name, bends = [ names ], punch = name, die = name or { tool = name, face = 1 or 2 (1) }
//             pad = name (none), in a channel-die
//             clamp = name or { tool = name, on = "frame" or "ram" ("frame") }, with a wiping-die and there
//             only: it holds the strip left of the edge, what lies right is wiped down
//             place = { face = "up" or "down" ("up"), first = "left" or "right" ("left"), shift_mm (0) }
//             stop = { free_deg } or { travel_mm } or { force_kN } (the angle of the drawing), or, of a hem
//             laid by flat tools, { gap_mm } between its inner faces (twice the drawing's inside radius);
//             free_deg is above 0 whatever the sense of the bend
//             A bend may be named in several steps, which press it again, if all but the last have a stop; a
//             hem is one that flat tools press last.
//   [[tool]]  of every kind besides: steel = name of a tool steel's card or .toml file (not given),
//             rating_kN_per_m (not given), its rated load, length_mm along the bend line (the
//             strip's width and 20), price (none) of a tool that is bought
//   press = name of a press or .toml file, at the top, or instead of it the table
//   [press]   title (none), force_kN, stroke_mm, and what stands about the tools, each if it is given:
//             punch_holder, ram (above the punch), die_holder, bed (below the die) = { width_mm, height_mm },
//             gauge = { height_mm above the die's face, length_mm, draws_back_mm (60), to the right, when
//             the punch has touched the strip, reach_mm and nearest_mm from the punch's axis (not checked) }
//             to the right of it; and, each checked if it is given: daylight_mm between bed and ram when the
//             ram is up, not less than the stroke; throat_mm from the punch's axis to the frame;
//             line_load_kN_per_m of tool; off_centre_kN_m; energy_J a stroke; speed = { approach_mm_per_s,
//             pressing_mm_per_s, return_mm_per_s, slow_above_mm (5), dwell_s (0.2) }; price_per_h, idle_kW
//   [handling] what an order costs, in seconds: stroke_s (5), turn_s (2), flip_s (2), tool_change_s (180),
//             gauge_change_s (20), slide_s (4)
//   [cost]    in any currency; defaults are common practice, where a worker's hour costs 45:
//             money = its name ("units"), batch (1000), strip_price_per_kg (3), scrap_price_per_kg (0.3),
//             gap_mm between blanks (2), end_scrap_percent (2), sheet_mm = [length, width], the length along
//             the rolling direction (none: a coil of the part's width), cutting_mm_per_s (50), pierce_s
//             (0.5), cutting_price_per_h (80), lay_in_s a stroke (3), press_price_per_h (the press's, or 30),
//             worker_price_per_h (45), tool_steel_price_per_kg (8) of steels without one of their own,
//             block_allowance_mm (2.5), milling_cm3_per_min (15), erosion_mm2_per_min (100), fitting_h (1),
//             milling_price_per_h (60), erosion_price_per_h (50), fitting_price_per_h (60),
//             hardening_price_per_kg (6), tool_batches that share the tools (1), inspection_s (10),
//             inspected_percent (5), storage_price_per_month (0.002), storage_months (3),
//             energy_price_per_kWh (0.25), idle_kW (the press's, or 1), efficiency_percent (30)
//   [run]     friction 0 to 0.3 (0.1), layers 5 to 41 (11), elements_per_thickness 1 to 16 (8),
//             gravity true or false (false): the strip's weight bends it too
//
// A rack, as a file: title, source, and [[tool]] tables as above, their names unlike those of the case. Racks
// that come with the program stand in assets/tools, cards in assets/materials; a path starts beside the case.
//
// A press, as a file: title, source, and the keys of [press]; those that come with the program stand in
// assets/presses. A tool steel, in assets/tool-steels: title, source, hardness_HRC or hardness_HV,
// youngs_modulus_MPa, poisson, density_kg_m3, compressive_yield_MPa, bending_strength_MPa (to break of
// hardened steel, to yield of soft), safety_tension, safety_compression, price_per_kg (none), hardened
// (false), sources.
//
// A card, as a file or as the table [material]:
//
//   title, source, youngs_modulus_MPa, poisson, density_kg_m3
//   hardening = { law = "swift", K_MPa, e0, n }, { law = "hollomon", K_MPa, n },
//               { law = "voce", Y_MPa, Q_MPa, b }, { law = "linear", Y_MPa, H_MPa }, or
//               { law = "table", plastic_strain = [...], stress_MPa = [...] }
//   backstress = [ { C_MPa, gamma } ... ], one or two (none)
//   modulus_drop = { to_MPa, rate } (none): the modulus falls to to_MPa with the plastic strain, by rate
//   r_value (1), tensile_strength_MPa, elongation_percent (not known)
//   metal (none) = "steel", "stainless-annealed", "stainless-hard", "stainless-1.4310", "brass-soft",
//             "brass-hard", or "aluminium-" and alloy and temper, as aluminium-6061-t6: the row of a table of
//             least radii, see sim/plan/least_radius.h
//   hardness = "soft", "medium" or "hard" ("medium"): class of the handbook's straight lines for developed
//             lengths, see sim/plan/bend_allowance.h
//   sources = { key = source } for numbers that come from elsewhere (none)

#pragma once

#include <filesystem>

#include "scenes/files/case/case.h"
#include "scenes/files/case/case_error.h"

namespace overbend::files {

// What must stand in a case: tools, and steps that make every bend; or, to plan them, the strip and its
// drawing alone. Tools and steps that stand there all the same are read and checked as ever, but need not
// make all bends. A plan asks besides that there are no more bends than can be put in order, and no hems.
enum class Needs { steps, drawing_alone, plan };

// Checks everything that can be told without pressing: keys, ranges, names, that each tool can be made and
// that the tools of each step go together with this strip.
// Throws CaseError for the first thing that is wrong, in the case file or in the card it names.
Case read_case(const std::filesystem::path& file, Needs needs = Needs::steps);

// Of a text that would stand in that file. Throws as above, with lines of the text.
Case read_case_text(const std::string& text, const std::filesystem::path& file, Needs needs = Needs::steps);

}  // namespace overbend::files
