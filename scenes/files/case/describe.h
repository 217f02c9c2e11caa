// What every table of a case, a rack and a card is: see fields.h. Where a file says a thing differently from
// a Case, the table as it stands in the file comes first.

#pragma once

#include "scenes/files/case/case.h"
#include "scenes/files/case/fields.h"

namespace overbend::files {

// ---- the case's own tables

struct TopTable {  // of a case: what is no table
    int format = 1;
    std::string title, rack;
};
struct StripTable {
    std::string material;  // empty: a table of its own
    double thickness = 0.0, width = 0.0;
    std::optional<double> thickness_tolerance, blank_length;
    std::vector<double> bend_lines;
    Rolling rolling = Rolling::lengthwise;
};
struct PathEntry {  // a flat, by one of two lengths, or a bend
    std::optional<double> flat, outside, angle, inside_radius;
    std::string name;
    Tolerance leg_tolerance, angle_tolerance, radius_tolerance;
};
struct CutoutEntry {
    double at = 0.0, across = 0.0;
    std::optional<double> hole;
    std::vector<double> slot;  // length, width
};
struct PartTable {
    std::optional<double> length_tolerance, angle_tolerance, radius_tolerance, profile_tolerance;
    std::vector<PathEntry> path;
    std::vector<CutoutEntry> cutouts;
};
struct DieName {
    std::string tool;
    std::optional<int> face;
};
struct ClampName {
    std::string tool;
    ClampOn on = ClampOn::frame;
};
struct PlaceTable {
    Face face = Face::up;
    First first = First::left;
    double shift = 0.0;
};
struct StopTable {  // one of them
    std::optional<double> free_angle, travel, force, gap;
    std::optional<double>& of(StopKind kind);  // not of the drawing's angle, which is none of them
};
struct StepTable {
    std::string name;
    Words bends;
    std::string punch, pad;
    DieName die;
    std::optional<ClampName> clamp;
    PlaceTable place;
    StopTable stop;
};
struct CostTable {
    shop::CostRates rates;
    shop::CostRates usual;  // some follow from the press
};
void describe(Fields& f, TopTable& t);
void describe(Fields& f, StripTable& t);
void describe(Fields& f, PathEntry& t);
void describe(Fields& f, CutoutEntry& t);
void describe(Fields& f, PartTable& t);
void describe(Fields& f, StepTable& t);
void describe(Fields& f, DieName& t);
void describe(Fields& f, ClampName& t);
void describe(Fields& f, PlaceTable& t);
void describe(Fields& f, StopTable& t);
void describe(Fields& f, Press& t);
void describe(Fields& f, PressBlock& t);
void describe(Fields& f, Gauge& t);
void describe(Fields& f, shop::Eccentric& t);
void describe(Fields& f, shop::RamSpeeds& t);
void describe(Fields& f, Handling& t);
void describe(Fields& f, CostTable& t);
void describe(Fields& f, RunOptions& t);

// ---- tools; their kinds describe themselves, see kinds.h

void describe(Fields& f, Tool& t);
void describe(Fields& f, ToolMake& t);

// ---- cards and racks

struct CardTable {
    material::Card card;
    std::vector<std::pair<std::string, std::string>> sources;
};
struct SteelTable {
    shop::ToolSteel steel;
    std::optional<double> rockwell, vickers;  // one of them
    std::vector<std::pair<std::string, std::string>> sources;
};
struct PressCard {
    Press press;
    std::string source;
};
struct RackTable {  // besides its tools
    std::string title, source;
};
void describe(Fields& f, CardTable& t);
void describe(Fields& f, material::Swift& t);
void describe(Fields& f, material::Hollomon& t);
void describe(Fields& f, material::Voce& t);
void describe(Fields& f, material::Linear& t);
void describe(Fields& f, material::Table& t);
void describe(Fields& f, material::Hardening& t);
void describe(Fields& f, material::Backstress& t);
void describe(Fields& f, material::ModulusDrop& t);
void describe(Fields& f, SteelTable& t);
void describe(Fields& f, PressCard& t);
void describe(Fields& f, RackTable& t);

}  // namespace overbend::files
