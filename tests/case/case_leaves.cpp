#include "tests/case/case_leaves.h"

#include <algorithm>
#include <cmath>
#include <type_traits>

namespace overbend::tests {

using namespace scenes;

namespace {

struct Leaves {
    std::vector<Leaf> all;

    template <class Value>
    void add(const std::string& path, const Value& value) {
        if constexpr (std::is_enum_v<Value>)
            all.push_back({path, "", static_cast<double>(static_cast<int>(value))});
        else if constexpr (std::is_arithmetic_v<Value>)
            all.push_back({path, "", static_cast<double>(value)});
        else
            take(path, value);
    }
    template <class Value>
    void add(const std::string& path, const std::optional<Value>& value) {
        add(path + "?", value.has_value());
        if (value) add(path, *value);
    }
    template <class Value>
    void add(const std::string& path, const std::vector<Value>& values) {
        add(path + ".size", values.size());
        for (std::size_t i = 0; i < values.size(); ++i)
            add(path + "[" + std::to_string(i + 1) + "]", values[i]);
    }
    template <class... Values>
    void add(const std::string& path, const std::variant<Values...>& value) {
        add(path + ".index", value.index());
        std::visit([&](const auto& held) { add(path, held); }, value);
    }

    void take(const std::string& path, const std::string& word) {
        all.push_back({path, word.empty() ? "(empty)" : word, 0.0});
    }
    void take(const std::string& path, const std::pair<std::string, std::string>& pair) {
        add(path + ".first", pair.first), add(path + ".second", pair.second);
    }
    void take(const std::string& path, const tool::Vec2& point) {
        add(path + ".x", point.x()), add(path + ".y", point.y());
    }

    // ---- the strip and its material
    void take(const std::string& path, const CardOrigin& value) {
        const auto& [from, file, sources] = value;
        add(path + ".from", from), add(path + ".file", file), add(path + ".sources", sources);
    }
    void take(const std::string& path, const material::Swift& value) {
        const auto& [K, e0, n] = value;
        add(path + ".K", K), add(path + ".e0", e0), add(path + ".n", n);
    }
    void take(const std::string& path, const material::Hollomon& value) {
        const auto& [K, n] = value;
        add(path + ".K", K), add(path + ".n", n);
    }
    void take(const std::string& path, const material::Voce& value) {
        const auto& [Y, Q, b] = value;
        add(path + ".Y", Y), add(path + ".Q", Q), add(path + ".b", b);
    }
    void take(const std::string& path, const material::Linear& value) {
        const auto& [Y, H] = value;
        add(path + ".Y", Y), add(path + ".H", H);
    }
    void take(const std::string& path, const material::Table& value) {
        const auto& [p, stress] = value;
        add(path + ".p", p), add(path + ".stress", stress);
    }
    void take(const std::string& path, const material::Backstress& value) {
        const auto& [C, gamma] = value;
        add(path + ".C", C), add(path + ".gamma", gamma);
    }
    void take(const std::string& path, const material::ModulusDrop& value) {
        const auto& [to, rate] = value;
        add(path + ".to", to), add(path + ".rate", rate);
    }
    void take(const std::string& path, const material::Card& value) {
        const auto& [name, title, source, modulus, poisson, density, hardening, backstress, drop, r_value,
                     strength, elongation, metal, hardness] = value;
        // a card in a file is called by its path, which the origin compares
        if (name.find(".toml") == std::string::npos) add(path + ".name", name);
        add(path + ".title", title), add(path + ".source", source);
        add(path + ".youngs_modulus", modulus), add(path + ".poisson", poisson);
        add(path + ".density", density), add(path + ".hardening", hardening);
        add(path + ".backstress", backstress), add(path + ".modulus_drop", drop);
        add(path + ".r_value", r_value), add(path + ".strength", strength);
        add(path + ".elongation", elongation);
        add(path + ".metal", metal), add(path + ".hardness", hardness);
    }

    // ---- the part
    void take(const std::string& path, const Bend& value) {
        const auto& [name, angle, radius] = value;
        add(path + ".name", name), add(path + ".angle", angle), add(path + ".inside_radius", radius);
    }
    void take(const std::string& path, const Part& value) {
        const auto& [flats, bends, tolerance] = value;
        add(path + ".flats", flats), add(path + ".bends", bends), add(path + ".tolerance", tolerance);
    }
    void take(const std::string& path, const Cutout& value) {
        const auto& [at, across, width, length] = value;
        add(path + ".at", at), add(path + ".across", across);
        add(path + ".width", width), add(path + ".length", length);
    }

    // ---- tools
    void take(const std::string& path, const tool::Relief& value) {
        const auto& [side, from, to, set_back, neck, root] = value;
        add(path + ".side", side), add(path + ".from", from), add(path + ".to", to);
        add(path + ".set_back", set_back), add(path + ".neck", neck), add(path + ".root_radius", root);
    }
    void take(const std::string& path, const tool::VeePunch& value) {
        const auto& [angle, nose, height, shank, relief] = value;
        add(path + ".angle", angle), add(path + ".nose_radius", nose);
        add(path + ".height", height), add(path + ".shank_width", shank);
        add(path + ".relief", relief);
    }
    void take(const std::string& path, const tool::VeeFace& value) {
        const auto& [angle, opening, shoulder, bottom] = value;
        add(path + ".angle", angle), add(path + ".opening", opening);
        add(path + ".shoulder_radius", shoulder), add(path + ".bottom_radius", bottom);
    }
    void take(const std::string& path, const tool::VeeDie& value) {
        const auto& [faces, width, height] = value;
        add(path + ".faces", faces), add(path + ".width", width), add(path + ".height", height);
    }
    void take(const std::string& path, const tool::OpenDie& value) {
        const auto& [opening, shoulder, depth, width] = value;
        add(path + ".opening", opening), add(path + ".shoulder_radius", shoulder);
        add(path + ".depth", depth), add(path + ".width", width);
    }
    void take(const std::string& path, const tool::OffsetPunch& value) {
        const auto& [offset, angle, nose, root, clearance, land, height] = value;
        add(path + ".offset", offset), add(path + ".angle", angle), add(path + ".nose_radius", nose);
        add(path + ".root_radius", root), add(path + ".clearance", clearance);
        add(path + ".land", land), add(path + ".height", height);
    }
    void take(const std::string& path, const tool::OffsetDie& value) {
        const auto& [offset, angle, shoulder, root, land, height] = value;
        add(path + ".offset", offset), add(path + ".angle", angle);
        add(path + ".shoulder_radius", shoulder), add(path + ".root_radius", root);
        add(path + ".land", land), add(path + ".height", height);
    }
    void take(const std::string& path, const tool::ChannelPunch& value) {
        const auto& [width, corner, relief, foot, shank_width, shank, height] = value;
        add(path + ".width", width), add(path + ".corner_radius", corner);
        add(path + ".side_relief", relief), add(path + ".foot_height", foot);
        add(path + ".shank_width", shank_width), add(path + ".shank", shank), add(path + ".height", height);
    }
    void take(const std::string& path, const tool::ChannelDie& value) {
        const auto& [opening, shoulder, depth, crown, width, height] = value;
        add(path + ".opening", opening), add(path + ".shoulder_radius", shoulder);
        add(path + ".depth", depth), add(path + ".floor_crown", crown);
        add(path + ".width", width), add(path + ".height", height);
    }
    void take(const std::string& path, const tool::Block& value) {
        const auto& [width, left, right, height] = value;
        add(path + ".width", width), add(path + ".left_radius", left);
        add(path + ".right_radius", right), add(path + ".height", height);
    }
    void take(const std::string& path, const FlatPunch& value) { add(path + ".block", value.block); }
    void take(const std::string& path, const FlatDie& value) { add(path + ".block", value.block); }
    void take(const std::string& path, const WipingDie& value) { add(path + ".block", value.block); }
    void take(const std::string& path, const WipingPunch& value) {
        const auto& [block, clearance] = value;
        add(path + ".block", block), add(path + ".clearance", clearance);
    }
    void take(const std::string& path, const tool::Spring& value) {
        const auto& [preload, rate, solid] = value;
        add(path + ".preload", preload), add(path + ".rate", rate), add(path + ".solid", solid);
    }
    void take(const std::string& path, const tool::HelicalSpring& value) {
        const auto& [wire, coil, turns, shear_modulus] = value;
        add(path + ".wire", wire), add(path + ".coil", coil);
        add(path + ".turns", turns), add(path + ".shear_modulus", shear_modulus);
    }
    void take(const std::string& path, const WoundSprings& value) {
        const auto& [each, count, preload] = value;
        add(path + ".each", each), add(path + ".count", count), add(path + ".preload", preload);
    }
    void take(const std::string& path, const Pad& value) {
        const auto& [block, spring, wound] = value;
        add(path + ".block", block), add(path + ".spring", spring), add(path + ".wound", wound);
    }
    void take(const std::string& path, const Clamp& value) {
        const auto& [block, spring, wound] = value;
        add(path + ".block", block), add(path + ".spring", spring), add(path + ".wound", wound);
    }
    void take(const std::string& path, const tool::PathPoint& value) {
        const auto& [at, radius, bulge] = value;
        add(path + ".at", at), add(path + ".radius", radius), add(path + ".bulge", bulge);
    }
    void take(const std::string& path, const OutlineFile& value) {
        const auto& [file, layer, gap, origin, turn] = value;
        add(path + ".path", file), add(path + ".layer", layer), add(path + ".gap", gap);
        add(path + ".origin", origin), add(path + ".turn", turn);
    }
    void take(const std::string& path, const OutlineTool& value) {
        const auto& [outline, points, file] = value;
        for (const tool::Piece& piece : outline.pieces()) {
            add(path + ".start", piece.start), add(path + ".end", piece.end);
            add(path + ".radius", piece.radius), add(path + ".sweep", piece.sweep);
            if (piece.is_arc()) add(path + ".centre", piece.centre);
        }
        add(path + ".points", points), add(path + ".file", file);
    }
    void take(const std::string& path, const Tool& value) {
        const auto& [name, shape, from_rack, make] = value;
        add(path + ".name", name), add(path + ".shape", shape), add(path + ".from_rack", from_rack);
        add(path + ".make", make);
    }
    void take(const std::string& path, const ToolMake& value) {
        const auto& [steel, card, rating, length, price] = value;
        add(path + ".steel", steel), add(path + ".card", card), add(path + ".rating", rating);
        add(path + ".length", length), add(path + ".price", price);
    }
    void take(const std::string& path, const shop::ToolSteel& value) {
        const auto& [name, title, source, hardness, modulus, poisson, density, yield, bending, in_tension,
                     in_compression, price, hardening] = value;
        add(path + ".name", name), add(path + ".title", title), add(path + ".source", source);
        add(path + ".hardness", hardness), add(path + ".modulus", modulus), add(path + ".poisson", poisson);
        add(path + ".density", density), add(path + ".yield", yield), add(path + ".bending", bending);
        add(path + ".safety_tension", in_tension), add(path + ".safety_compression", in_compression);
        add(path + ".price", price), add(path + ".hardening", hardening);
    }

    // ---- steps, the press and the run
    void take(const std::string& path, const Step& value) {
        const auto& [name, bends, punch, die, die_face, pad, clamp, clamp_on, face, first, shift, stop,
                     stop_value] = value;
        add(path + ".name", name), add(path + ".bends", bends), add(path + ".punch", punch);
        add(path + ".die", die), add(path + ".die_face", die_face), add(path + ".pad", pad);
        add(path + ".clamp", clamp), add(path + ".clamp_on", clamp_on), add(path + ".face", face);
        add(path + ".first", first), add(path + ".shift", shift), add(path + ".stop", stop);
        add(path + ".stop_value", stop_value);
    }
    void take(const std::string& path, const PressBlock& value) {
        const auto& [width, height] = value;
        add(path + ".width", width), add(path + ".height", height);
    }
    void take(const std::string& path, const Gauge& value) {
        const auto& [height, length, draws_back, reach, nearest] = value;
        add(path + ".height", height), add(path + ".length", length), add(path + ".draws_back", draws_back);
        add(path + ".reach", reach), add(path + ".nearest", nearest);
    }
    void take(const std::string& path, const shop::RamSpeeds& value) {
        const auto& [approach, pressing, going_back, slow_above, dwell] = value;
        add(path + ".approach", approach), add(path + ".pressing", pressing);
        add(path + ".going_back", going_back), add(path + ".slow_above", slow_above);
        add(path + ".dwell", dwell);
    }
    void take(const std::string& path, const Press& value) {
        const auto& [title, force, stroke, punch_holder, die_holder, ram, bed, gauge, daylight, throat,
                     line_load, off_centre, energy, speeds, price, idle] = value;
        add(path + ".title", title), add(path + ".force", force), add(path + ".stroke", stroke);
        add(path + ".punch_holder", punch_holder), add(path + ".die_holder", die_holder);
        add(path + ".ram", ram), add(path + ".bed", bed), add(path + ".gauge", gauge);
        add(path + ".daylight", daylight), add(path + ".throat", throat);
        add(path + ".line_load", line_load), add(path + ".off_centre", off_centre);
        add(path + ".energy", energy), add(path + ".speeds", speeds);
        add(path + ".price", price), add(path + ".idle", idle);
    }
    void take(const std::string& path, const shop::Sheet& value) {
        const auto& [length, width] = value;
        add(path + ".length", length), add(path + ".width", width);
    }
    void take(const std::string& path, const shop::MakingRates& value) {
        const auto& [allowance, milling, erosion, fitting] = value;
        add(path + ".allowance", allowance), add(path + ".milling", milling);
        add(path + ".erosion", erosion), add(path + ".fitting", fitting);
    }
    void take(const std::string& path, const shop::CostRates& value) {
        const auto& [money, batch, strip, scrap, gap, end_scrap, sheet, cutting, pierce, cutting_hour, lay_in,
                     press_hour, worker_hour, tool_steel, milling_hour, erosion_hour, fitting_hour, hardening,
                     making, tool_batches, inspection, inspected, storage, months, energy, idle, efficiency] =
            value;
        add(path + ".money", money), add(path + ".batch", batch), add(path + ".strip", strip);
        add(path + ".scrap", scrap), add(path + ".gap", gap), add(path + ".end_scrap", end_scrap);
        add(path + ".sheet", sheet), add(path + ".cutting", cutting), add(path + ".pierce", pierce);
        add(path + ".cutting_hour", cutting_hour), add(path + ".lay_in", lay_in);
        add(path + ".press_hour", press_hour), add(path + ".worker_hour", worker_hour);
        add(path + ".tool_steel", tool_steel), add(path + ".milling_hour", milling_hour);
        add(path + ".erosion_hour", erosion_hour), add(path + ".fitting_hour", fitting_hour);
        add(path + ".hardening", hardening), add(path + ".making", making);
        add(path + ".tool_batches", tool_batches), add(path + ".inspection", inspection);
        add(path + ".inspected", inspected), add(path + ".storage", storage), add(path + ".months", months);
        add(path + ".energy", energy), add(path + ".idle", idle), add(path + ".efficiency", efficiency);
    }
    void take(const std::string& path, const Handling& value) {
        const auto& [stroke, turn, flip, tool_change, gauge_change, slide] = value;
        add(path + ".stroke", stroke), add(path + ".turn", turn), add(path + ".flip", flip);
        add(path + ".tool_change", tool_change), add(path + ".gauge_change", gauge_change);
        add(path + ".slide", slide);
    }
    void take(const std::string& path, const RunOptions& value) {
        const auto& [friction, layers, elements, gravity] = value;
        add(path + ".friction", friction), add(path + ".layers", layers);
        add(path + ".elements_per_thickness", elements), add(path + ".gravity", gravity);
    }
    void take(const Case& value) {
        const auto& [file, title, card, origin, thickness, width, blank_length, bend_lines, rolling, part,
                     cutouts, rack, tools, steps, press, press_name, cost, handling, run] = value;
        add("title", title), add("material", card), add("card_origin", origin);
        add("thickness", thickness), add("width", width), add("blank_length", blank_length);
        add("bend_lines", bend_lines), add("rolling", rolling), add("part", part), add("cutouts", cutouts);
        add("rack", rack), add("tools", tools), add("steps", steps), add("press", press),
            add("handling", handling);
        add("press_name", press_name), add("cost", cost);
        add("run", run);
    }
};

std::string shown(const Leaf& leaf) {
    return leaf.path + " " + (leaf.word.empty() ? std::to_string(leaf.number) : leaf.word);
}

bool same(const Leaf& a, const Leaf& b) {
    const double scale = std::max({std::abs(a.number), std::abs(b.number), 1.0});
    return a.path == b.path && a.word == b.word && std::abs(a.number - b.number) <= 1e-12 * scale;
}

}  // namespace

std::vector<Leaf> leaves_of(const Case& job) {
    Leaves leaves;
    leaves.take(job);
    return leaves.all;
}

std::vector<std::string> differences(const Case& a, const Case& b) {
    const std::vector<Leaf> left = leaves_of(a), right = leaves_of(b);
    std::vector<std::string> found;
    for (std::size_t i = 0; i < std::min(left.size(), right.size()); ++i) {
        if (!same(left[i], right[i])) found.push_back(shown(left[i]) + " against " + shown(right[i]));
    }
    if (left.size() != right.size())
        found.push_back(std::to_string(left.size()) + " against " + std::to_string(right.size()) + " fields");
    return found;
}

}  // namespace overbend::tests
