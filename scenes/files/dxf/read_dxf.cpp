#include "scenes/files/dxf/read_dxf.h"

#include <dxflib/dl_creationadapter.h>
#include <dxflib/dl_dxf.h>

#include <algorithm>
#include <cmath>
#include <locale>
#include <map>
#include <set>
#include <sstream>

#include "scenes/files/reading/most.h"
#include "sim/units.h"

namespace overbend::files {

namespace {

using tool::Piece;
using tool::Vec2;

constexpr double flat = 1e-6;  // mm, how far from the plane still is in it

// An entity as it stands in the file: its name, and its groups up to the next.
struct Entity {
    std::string name, layer = "0";
    int line = 0;
    std::vector<DxfGroup> groups;
    bool on_paper = false;
};

const std::map<int, std::string>& unit_names() {
    static const std::map<int, std::string> names = {{1, "inches"},      {2, "feet"},        {5, "cm"},
                                                     {6, "m"},           {8, "microinches"}, {9, "mils"},
                                                     {13, "micrometres"}};
    return names;
}

void check_units(const std::vector<DxfGroup>& groups) {
    for (std::size_t i = 0; i + 1 < groups.size(); ++i) {
        if (groups[i].code != 9 || groups[i].value != "$INSUNITS") continue;
        const int units = dxf_whole(groups[i + 1]);
        if (units == 0 || units == 4) continue;
        const auto name = unit_names().find(units);
        throw DxfError(groups[i + 1].line,
                       "its units are " + (name == unit_names().end()
                                               ? "not mm ($INSUNITS " + std::to_string(units) + ")"
                                               : name->second),
                       "save it in mm ($INSUNITS 4)");
    }
}

std::vector<Entity> entities_of(const std::vector<DxfGroup>& groups) {
    std::vector<Entity> found;
    bool inside = false, there = false;
    for (std::size_t i = 0; i < groups.size(); ++i) {
        const DxfGroup& group = groups[i];
        if (group.code == 0) {
            if (group.value == "SECTION" && i + 1 < groups.size() && groups[i + 1].value == "ENTITIES") {
                inside = there = true;
                ++i;
                continue;
            }
            if (group.value == "ENDSEC") inside = false;
            if (inside) found.push_back({group.value, "0", group.line, {}, false});
            continue;
        }
        if (!inside || found.empty()) continue;
        Entity& entity = found.back();
        if (group.code == 8) entity.layer = group.value;
        if (group.code == 67) entity.on_paper = dxf_whole(group) == 1;
        entity.groups.push_back(group);
    }
    if (!there) throw DxfError(0, "it has no section ENTITIES", "give a drawing with lines and arcs");
    return found;
}

// Group codes that make the entity, and are handed on.
const std::map<std::string, std::set<int>>& codes_of_kinds() {
    static const std::map<std::string, std::set<int>> codes = {{"LINE", {10, 20, 30, 11, 21, 31}},
                                                               {"ARC", {10, 20, 30, 40, 50, 51}},
                                                               {"CIRCLE", {10, 20, 30, 40}},
                                                               {"LWPOLYLINE", {90, 70, 38, 10, 20, 42}},
                                                               {"POLYLINE", {70, 30}},
                                                               {"VERTEX", {10, 20, 30, 42}},
                                                               {"SEQEND", {}}};
    return codes;
}
bool is_no_outline(const std::string& name) {
    static const std::set<std::string> names = {"TEXT",  "MTEXT",    "DIMENSION", "LEADER",
                                                "HATCH", "VIEWPORT", "ATTDEF",    "POINT"};
    return names.count(name) > 0;
}

void require(const Entity& entity, std::initializer_list<int> codes) {
    for (const int code : codes) {
        const bool there = std::any_of(entity.groups.begin(), entity.groups.end(),
                                       [&](const DxfGroup& group) { return group.code == code; });
        if (!there)
            throw DxfError(entity.line, "this " + entity.name + " has no group " + std::to_string(code),
                           "it is damaged; save the file again");
    }
}

void check_numbers(const Entity& entity) {
    for (const DxfGroup& group : entity.groups) {
        const int code = group.code;
        if (code == 230 && std::abs(dxf_number(group) - 1.0) > flat)
            throw DxfError(group.line, "this " + entity.name + " does not lie in the drawing's plane",
                           "draw it flat, seen from above");
        if (codes_of_kinds().at(entity.name).count(code) == 0 || code == 70 || code == 90) continue;
        const double value = dxf_number(group);
        const bool height = code == 30 || code == 31 || code == 38;
        if (height && std::abs(value) > flat)
            throw DxfError(group.line, "this " + entity.name + " is at z = " + group.value,
                           "draw it flat, at z = 0");
        const bool place = code == 10 || code == 20 || code == 11 || code == 21 || code == 40;
        const double most = entity.name == "ARC" ? largest_radius : largest_coordinate;
        if (place && std::abs(value) > most)
            throw DxfError(group.line, group.value + " mm is too far out for a tool",
                           "give at most " + std::to_string(std::lround(most)) + " in either direction");
        if (code == 40 && !(value > 0.0))
            throw DxfError(group.line, "a radius of " + group.value, "give more than 0 mm");
        if (code == 42 && std::abs(value) > 1000.0)
            throw DxfError(group.line, "a bulge of " + group.value, "give -1000 to 1000");
    }
}

void check_polyline_kind(const Entity& entity) {
    for (const DxfGroup& group : entity.groups)
        if (group.code == 70 && (dxf_whole(group) & ~(1 | 128)) != 0)
            throw DxfError(entity.line, "this " + entity.name + " is a curve, a mesh or in space",
                           "give plain polylines of lines and arcs");
}

// As many corners as it says, each with both coordinates, and nothing before the first.
void check_corners(const Entity& entity) {
    int said = -1, x = 0, y = 0;
    for (const DxfGroup& group : entity.groups) {
        if (group.code == 90) said = dxf_whole(group);
        if (group.code == 10) x += x == y ? 1 : 2;  // 2: never equal again
        if (group.code == 20) y += y + 1 == x ? 1 : 2;
        if ((group.code == 10 || group.code == 20 || group.code == 42) && (said < 0 || x == 0))
            throw DxfError(group.line, "this corner comes before the count of corners",
                           "it is damaged; save the file again");
    }
    if (said != x || x != y)
        throw DxfError(entity.line, "this LWPOLYLINE has a wrong count of corners",
                       "it is damaged; save the file again");
}

void check(const Entity& entity) {
    check_numbers(entity);
    if (entity.name == "LINE") require(entity, {10, 20, 11, 21});
    if (entity.name == "ARC") require(entity, {10, 20, 40, 50, 51});
    if (entity.name == "CIRCLE") require(entity, {10, 20, 40});
    if (entity.name == "VERTEX") require(entity, {10, 20});
    if (entity.name == "LWPOLYLINE") require(entity, {90}), check_corners(entity);
    if (entity.name == "LWPOLYLINE" || entity.name == "POLYLINE") check_polyline_kind(entity);
}

// Those to be taken, checked. A polyline's corners go with it, whatever their own layer says.
std::vector<Entity> taken(std::vector<Entity> all, const std::string& layer) {
    std::vector<Entity> found;
    std::size_t pieces = 0;
    bool corners = false, theirs = false;  // within a polyline, and one that is taken
    for (Entity& entity : all) {
        const bool corner = entity.name == "VERTEX" || entity.name == "SEQEND";
        if (corner && !corners)
            throw DxfError(entity.line, "a " + entity.name + " outside a POLYLINE",
                           "it is damaged; save the file again");
        if (!corner) {
            if (corners)
                throw DxfError(entity.line, "the POLYLINE before it has no end (SEQEND)",
                               "it is damaged; save the file again");
            theirs = !entity.on_paper && (layer.empty() || entity.layer == layer);
        }
        corners = entity.name == "POLYLINE" || entity.name == "VERTEX";
        if (!theirs || is_no_outline(entity.name)) continue;
        if (codes_of_kinds().count(entity.name) == 0)
            throw DxfError(entity.line, "a " + entity.name.substr(0, 40) + " cannot be part of an outline",
                           "use only lines, arcs and polylines, or name their layer");
        check(entity);
        for (const DxfGroup& group : entity.groups)
            pieces += entity.name == "LWPOLYLINE" && group.code == 10 ? 1 : 0;
        pieces += entity.name == "LWPOLYLINE" || entity.name == "POLYLINE" || entity.name == "SEQEND" ? 0 : 1;
        if (pieces > most::dxf_pieces)
            throw DxfError(entity.line,
                           "there are more than " + std::to_string(most::dxf_pieces) + " lines and arcs",
                           "give fewer");
        found.push_back(std::move(entity));
    }
    if (corners) throw DxfError(0, "its last POLYLINE has no end (SEQEND)", "save the file again");
    return found;
}

// What of the file dxflib is given: entities of known kinds, with known groups.
std::string clean_text(const std::vector<Entity>& entities) {
    std::string text = "0\nSECTION\n2\nENTITIES\n";
    for (const Entity& entity : entities) {
        text += "0\n" + entity.name + "\n8\n0\n";
        const std::set<int>& codes = codes_of_kinds().at(entity.name);
        for (const DxfGroup& group : entity.groups)
            if (codes.count(group.code) > 0) text += std::to_string(group.code) + "\n" + group.value + "\n";
    }
    return text + "0\nENDSEC\n0\nEOF\n";
}

// Collects what dxflib finds; entity after entity as they were handed to it.
class Gatherer : public DL_CreationAdapter {
  public:
    explicit Gatherer(const std::vector<Entity>& entities) {
        for (const Entity& entity : entities)
            if (entity.name != "VERTEX" && entity.name != "SEQEND") from_.push_back(&entity);
    }
    void addLine(const DL_LineData& d) override {
        next();
        add({Vec2(d.x1, d.y1), Vec2(d.x2, d.y2)});
    }
    void addArc(const DL_ArcData& d) override {
        next();
        const double from = d.angle1 * pi / 180.0, to = d.angle2 * pi / 180.0;
        Piece piece;
        piece.centre = {d.cx, d.cy};
        piece.radius = d.radius;
        piece.start = piece.centre + d.radius * Vec2(std::cos(from), std::sin(from));
        piece.end = piece.centre + d.radius * Vec2(std::cos(to), std::sin(to));
        piece.sweep = std::fmod(to - from, 2.0 * pi);
        if (piece.sweep <= 0.0) piece.sweep += 2.0 * pi;
        if (std::max(piece.start.cwiseAbs().maxCoeff(), piece.end.cwiseAbs().maxCoeff()) > largest_coordinate)
            throw DxfError(from_[at_ - 1]->line, "this ARC ends too far out for a tool",
                           "give at most 2000 in either direction");
        add(piece);
    }
    void addCircle(const DL_CircleData& d) override {
        next();
        const Vec2 centre(d.cx, d.cy), right = centre + Vec2(d.radius, 0.0);
        add({right, right, d.radius, centre, 2.0 * pi});
    }
    void addPolyline(const DL_PolylineData& d) override {
        next();
        closed_ = (d.flags & 1) != 0;
    }
    void addVertex(const DL_VertexData& d) override { corners_.push_back(d); }

    std::vector<DxfPiece> done() {
        finish_polyline();
        if (at_ != from_.size()) throw DxfError(0, "not all of it could be read", "save the file again");
        return std::move(found_);
    }

  private:
    void next() {
        finish_polyline();
        ++at_;
        if (at_ > from_.size()) throw DxfError(0, "it could not be read", "save the file again");
    }
    void finish_polyline() {
        const std::size_t count = corners_.size();
        for (std::size_t i = 0; i + (closed_ ? 0 : 1) < count; ++i) {
            const DL_VertexData &a = corners_[i], &b = corners_[(i + 1) % count];
            add(piece_of_bulge({a.x, a.y}, {b.x, b.y}, a.bulge));
        }
        corners_.clear();
    }
    void add(const Piece& piece) {
        if (!piece.is_arc() && (piece.end - piece.start).norm() < 1e-9) return;  // nothing at all
        const Entity& entity = *from_[at_ - 1];
        found_.push_back({piece, entity.layer, entity.line});
    }

    std::vector<const Entity*> from_;
    std::size_t at_ = 0;
    bool closed_ = false;
    std::vector<DL_VertexData> corners_;
    std::vector<DxfPiece> found_;
};

// dxflib reads numbers in the program's locale: the classic one is set as long as it works.
class ClassicLocale {
  public:
    ClassicLocale() : before_(std::locale::global(std::locale::classic())) {}
    ~ClassicLocale() { std::locale::global(before_); }
    ClassicLocale(const ClassicLocale&) = delete;
    ClassicLocale& operator=(const ClassicLocale&) = delete;

  private:
    std::locale before_;
};

[[noreturn]] void nothing_found(const std::vector<Entity>& all, const std::string& layer) {
    std::set<std::string> layers;
    for (const Entity& entity : all)
        if (codes_of_kinds().count(entity.name) > 0) layers.insert(entity.layer.substr(0, 60));
    if (layer.empty() || layers.empty())
        throw DxfError(0, "it has no lines or arcs", "give a drawing with an outline");
    std::string names;
    for (const std::string& name : layers) names += (names.empty() ? "" : ", ") + name;
    throw DxfError(0, "there are no lines or arcs on the layer \"" + layer + "\"",
                   "layers with lines and arcs: " + names.substr(0, 400));
}

}  // namespace

Piece piece_of_bulge(const Vec2& start, const Vec2& end, double bulge) {
    Piece piece;
    piece.start = start;
    piece.end = end;
    const Vec2 chord = end - start;
    const double length = chord.norm();
    if (0.5 * length * std::abs(bulge) < 1e-7) return piece;
    // half the sweep by its half's tangent: sin = 2 b / (1 + b2), cos = (1 - b2) / (1 + b2)
    const double b2 = bulge * bulge;
    piece.sweep = 4.0 * std::atan(bulge);
    piece.radius = 0.25 * length * (1.0 + b2) / std::abs(bulge);
    piece.centre = 0.5 * (start + end) + 0.25 * (1.0 - b2) / bulge * Vec2(-chord.y(), chord.x());
    return piece;
}

std::vector<DxfPiece> read_dxf(const std::string& text, const std::string& layer) {
    const std::vector<DxfGroup> groups = dxf_groups(text);
    check_units(groups);
    const std::vector<Entity> all = entities_of(groups);
    const std::vector<Entity> entities = taken(all, layer);
    std::istringstream in(clean_text(entities));
    in.imbue(std::locale::classic());
    Gatherer gatherer(entities);
    {
        const ClassicLocale classic;
        DL_Dxf().in(in, &gatherer);
    }
    std::vector<DxfPiece> found = gatherer.done();
    if (found.empty()) nothing_found(all, layer);
    return found;
}

}  // namespace overbend::files
