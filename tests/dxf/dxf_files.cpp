#include "tests/dxf/dxf_files.h"

#include <charconv>

#include "scenes/files/dxf/chain.h"
#include "sim/errors.h"

namespace overbend::tests {

namespace {

std::string digits(double value) {
    char text[64];
    return std::string(text, std::to_chars(text, text + sizeof text, value).ptr);
}

}  // namespace

std::string groups_text(const Groups& groups) {
    std::string text;
    for (const auto& [code, value] : groups) text += std::to_string(code) + "\n" + value + "\n";
    return text;
}

std::string dxf_file(const std::string& entities, const std::string& units) {
    return groups_text({{0, "SECTION"}, {2, "HEADER"}, {9, "$INSUNITS"}, {70, units}, {0, "ENDSEC"}}) +
           groups_text({{0, "SECTION"}, {2, "ENTITIES"}}) + entities +
           groups_text({{0, "ENDSEC"}, {0, "EOF"}});
}

std::string line(double ax, double ay, double bx, double by, const std::string& layer) {
    return groups_text(
        {{0, "LINE"}, {8, layer}, {10, digits(ax)}, {20, digits(ay)}, {11, digits(bx)}, {21, digits(by)}});
}

std::string arc(double x, double y, double radius, double from_deg, double to_deg, const std::string& layer) {
    return groups_text({{0, "ARC"},
                        {8, layer},
                        {10, digits(x)},
                        {20, digits(y)},
                        {40, digits(radius)},
                        {50, digits(from_deg)},
                        {51, digits(to_deg)}});
}

std::string light_polyline(const std::vector<Corner>& corners, Ring ring) {
    std::string text = groups_text({{0, "LWPOLYLINE"},
                                    {8, "0"},
                                    {90, std::to_string(corners.size())},
                                    {70, ring == Ring::closed ? "1" : "0"}});
    for (const Corner& c : corners) {
        text += groups_text({{10, digits(c.x)}, {20, digits(c.y)}});
        if (c.bulge != 0.0) text += groups_text({{42, digits(c.bulge)}});
    }
    return text;
}

std::string heavy_polyline(const std::vector<Corner>& corners, Ring ring) {
    std::string text =
        groups_text({{0, "POLYLINE"}, {8, "0"}, {66, "1"}, {70, ring == Ring::closed ? "1" : "0"}});
    for (const Corner& c : corners)
        text += groups_text(
            {{0, "VERTEX"}, {8, "0"}, {10, digits(c.x)}, {20, digits(c.y)}, {42, digits(c.bulge)}});
    return text + groups_text({{0, "SEQEND"}});
}

Mistake mistake_of(const std::string& file, const std::string& layer, double gap) {
    try {
        outline_of(file, layer, gap);
    } catch (const files::DxfError& error) {
        return {error.line, error.wrong, error.right};
    } catch (const OutOfRange& error) {
        return {0, error.wrong, error.right};
    }
    return {};
}

tool::ArcOutline outline_of(const std::string& file, const std::string& layer, double gap) {
    return tool::ArcOutline(files::chained(files::read_dxf(file, layer), gap));
}

}  // namespace overbend::tests
