#include "tests/case/case_leaves.h"

#include <algorithm>
#include <cmath>
#include <type_traits>

namespace overbend::tests {

using namespace files;

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

    // The members of a struct, by their places: its bindings do not compile when one was added.
    template <class... Values>
    void each(const std::string& path, const Values&... values) {
        int place = 0;
        (add(path + "." + std::to_string(++place), values), ...);
    }

    // ---- the strip and its material
    void take(const std::string& path, const CardOrigin& value) {
        const auto& [from, file, sources] = value;
        each(path, from, file, sources);
    }
    void take(const std::string& path, const material::Swift& value) {
        const auto& [K, e0, n] = value;
        each(path, K, e0, n);
    }
    void take(const std::string& path, const material::Hollomon& value) {
        const auto& [K, n] = value;
        each(path, K, n);
    }
    void take(const std::string& path, const material::Voce& value) {
        const auto& [Y, Q, b] = value;
        each(path, Y, Q, b);
    }
    void take(const std::string& path, const material::Linear& value) {
        const auto& [Y, H] = value;
        each(path, Y, H);
    }
    void take(const std::string& path, const material::Table& value) {
        const auto& [p, stress] = value;
        each(path, p, stress);
    }
    void take(const std::string& path, const material::Backstress& value) {
        const auto& [C, gamma] = value;
        each(path, C, gamma);
    }
    void take(const std::string& path, const material::ModulusDrop& value) {
        const auto& [to, rate] = value;
        each(path, to, rate);
    }
    void take(const std::string& path, const material::Card& value) {
        const auto& [name, title, source, modulus, poisson, density, hardening, backstress, drop, r_value,
                     strength, elongation, range, reduction_of_area, metal, hardness, price, cutting_rate] =
            value;
        // a card in a file is called by its path, which the origin compares
        if (name.find(".toml") == std::string::npos) add(path + ".name", name);
        each(path, title, source, modulus, poisson, density, hardening, backstress, drop, r_value, strength,
             elongation, range, reduction_of_area, metal, hardness, price, cutting_rate);
    }

    // ---- the part
    void take(const std::string& path, const Tolerance& value) {
        const auto& [either_way, reference] = value;
        each(path, either_way, reference);
    }
    void take(const std::string& path, const Bend& value) {
        const auto& [name, angle, radius, tolerance, radius_tolerance] = value;
        each(path, name, angle, radius, tolerance, radius_tolerance);
    }
    void take(const std::string& path, const Part& value) {
        const auto& [flats, bends, legs, length, angle, radius, profile] = value;
        each(path, flats, bends, legs, length, angle, radius, profile);
    }
    void take(const std::string& path, const Cutout& value) {
        const auto& [at, across, width, length] = value;
        each(path, at, across, width, length);
    }

    // ---- tools
    void take(const std::string& path, const tool::Relief& value) {
        const auto& [side, from, to, set_back, neck, root] = value;
        each(path, side, from, to, set_back, neck, root);
    }
    void take(const std::string& path, const tool::VeePunch& value) {
        const auto& [angle, nose, height, shank, relief] = value;
        each(path, angle, nose, height, shank, relief);
    }
    void take(const std::string& path, const tool::VeeFace& value) {
        const auto& [angle, opening, shoulder, bottom] = value;
        each(path, angle, opening, shoulder, bottom);
    }
    void take(const std::string& path, const tool::VeeDie& value) {
        const auto& [faces, width, height] = value;
        each(path, faces, width, height);
    }
    void take(const std::string& path, const tool::OpenDie& value) {
        const auto& [opening, shoulder, depth, width] = value;
        each(path, opening, shoulder, depth, width);
    }
    void take(const std::string& path, const tool::OffsetPunch& value) {
        const auto& [offset, angle, nose, root, clearance, land, height] = value;
        each(path, offset, angle, nose, root, clearance, land, height);
    }
    void take(const std::string& path, const tool::OffsetDie& value) {
        const auto& [offset, angle, shoulder, root, land, height] = value;
        each(path, offset, angle, shoulder, root, land, height);
    }
    void take(const std::string& path, const tool::ChannelPunch& value) {
        const auto& [width, corner, relief, foot, shank_width, shank, height] = value;
        each(path, width, corner, relief, foot, shank_width, shank, height);
    }
    void take(const std::string& path, const tool::ChannelDie& value) {
        const auto& [opening, shoulder, depth, crown, width, height] = value;
        each(path, opening, shoulder, depth, crown, width, height);
    }
    void take(const std::string& path, const tool::RadiusPunch& value) {
        const auto& [nose, width, height] = value;
        each(path, nose, width, height);
    }
    void take(const std::string& path, const tool::RadiusDie& value) {
        const auto& [groove, opening, shoulder, width, height] = value;
        each(path, groove, opening, shoulder, width, height);
    }
    void take(const std::string& path, const tool::Block& value) {
        const auto& [width, left, right, height] = value;
        each(path, width, left, right, height);
    }
    void take(const std::string& path, const FlatPunch& value) { each(path, value.block); }
    void take(const std::string& path, const FlatDie& value) { each(path, value.block); }
    void take(const std::string& path, const WipingDie& value) { each(path, value.block); }
    void take(const std::string& path, const WipingPunch& value) {
        const auto& [block, clearance] = value;
        each(path, block, clearance);
    }
    void take(const std::string& path, const tool::Spring& value) {
        const auto& [preload, rate, solid] = value;
        each(path, preload, rate, solid);
    }
    void take(const std::string& path, const tool::HelicalSpring& value) {
        const auto& [wire, coil, turns, shear_modulus] = value;
        each(path, wire, coil, turns, shear_modulus);
    }
    void take(const std::string& path, const WoundSprings& value) {
        const auto& [one, count, preload] = value;
        each(path, one, count, preload);
    }
    void take(const std::string& path, const Pad& value) {
        const auto& [block, spring, wound] = value;
        each(path, block, spring, wound);
    }
    void take(const std::string& path, const Clamp& value) {
        const auto& [block, spring, wound] = value;
        each(path, block, spring, wound);
    }
    void take(const std::string& path, const tool::PathPoint& value) {
        const auto& [at, radius, bulge] = value;
        each(path, at, radius, bulge);
    }
    void take(const std::string& path, const OutlineFile& value) {
        const auto& [file, layer, gap, origin, turn] = value;
        each(path, file, layer, gap, origin, turn);
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
        each(path, name, shape, from_rack, make);
    }
    void take(const std::string& path, const ToolMake& value) {
        const auto& [steel, card, rating, length, price] = value;
        each(path, steel, card, rating, length, price);
    }
    void take(const std::string& path, const shop::ToolSteel& value) {
        const auto& [name, title, source, hardness, modulus, poisson, density, yield, bending, in_tension,
                     in_compression, price, hardening] = value;
        each(path, name, title, source, hardness, modulus, poisson, density, yield, bending, in_tension,
             in_compression, price, hardening);
    }

    // ---- steps, the press and the run
    void take(const std::string& path, const Step& value) {
        const auto& [name, bends, punch, die, die_face, pad, clamp, clamp_on, face, first, shift, stop,
                     stop_value] = value;
        each(path, name, bends, punch, die, die_face, pad, clamp, clamp_on, face, first, shift, stop,
             stop_value);
    }
    void take(const std::string& path, const PressBlock& value) {
        const auto& [width, height] = value;
        each(path, width, height);
    }
    void take(const std::string& path, const Gauge& value) {
        const auto& [height, length, draws_back, reach, nearest] = value;
        each(path, height, length, draws_back, reach, nearest);
    }
    void take(const std::string& path, const shop::Eccentric& value) {
        const auto& [rated_angle] = value;
        each(path, rated_angle);
    }
    void take(const std::string& path, const shop::RamSpeeds& value) {
        const auto& [approach, pressing, going_back, slow_above, dwell] = value;
        each(path, approach, pressing, going_back, slow_above, dwell);
    }
    void take(const std::string& path, const Press& value) {
        const auto& [title, force, stroke, punch_holder, die_holder, ram, bed, gauge, daylight, throat,
                     line_load, off_centre, energy, eccentric, speeds, price, idle] = value;
        each(path, title, force, stroke, punch_holder, die_holder, ram, bed, gauge, daylight, throat,
             line_load, off_centre, energy, eccentric, speeds, price, idle);
    }
    void take(const std::string& path, const shop::Sheet& value) {
        const auto& [length, width] = value;
        each(path, length, width);
    }
    void take(const std::string& path, const shop::MakingRates& value) {
        const auto& [allowance, milling, erosion, fitting, design, programming, grinding] = value;
        each(path, allowance, milling, erosion, fitting, design, programming, grinding);
    }
    void take(const std::string& path, const shop::CostRates& value) {
        const auto& [money, batch, strip_per_kg, scrap_per_kg, gap, end_scrap, sheet, cutting_speed,
                     cutting_most, pierce, cutting_per_hour, deburring, lay_in, press_per_hour,
                     worker_per_hour, cleaning, programming, trial_parts, first_article, tool_steel_per_kg,
                     milling_per_hour, erosion_per_hour, fitting_per_hour, grinding_per_hour, design_per_hour,
                     hardening_per_kg, hardening_least, spring, spring_per_kg, making, tool_batches,
                     regrind_strokes, regrinds, regrind, inspection, inspected, rejected, packaging, storage,
                     storage_months, energy_per_kWh, idle_power, efficiency, overhead] = value;
        each(path, money, batch, strip_per_kg, scrap_per_kg, gap, end_scrap, sheet, cutting_speed,
             cutting_most, pierce, cutting_per_hour, deburring, lay_in, press_per_hour, worker_per_hour,
             cleaning, programming, trial_parts, first_article, tool_steel_per_kg, milling_per_hour,
             erosion_per_hour, fitting_per_hour, grinding_per_hour, design_per_hour, hardening_per_kg,
             hardening_least, spring, spring_per_kg, making, tool_batches, regrind_strokes, regrinds, regrind,
             inspection, inspected, rejected, packaging, storage, storage_months, energy_per_kWh, idle_power,
             efficiency, overhead);
    }
    void take(const std::string& path, const Handling& value) {
        const auto& [stroke, turn, flip, tool_change, gauge_change, slide] = value;
        each(path, stroke, turn, flip, tool_change, gauge_change, slide);
    }
    void take(const std::string& path, const RunOptions& value) {
        const auto& [friction, layers, elements, gravity] = value;
        each(path, friction, layers, elements, gravity);
    }
    void take(const Case& value) {
        const auto& [file, title, card, origin, thickness, off, width, blank_length, bend_lines, rolling,
                     part, cutouts, rack, tools, steps, press, press_name, cost, handling, run] = value;
        (void)file;
        each("case", title, card, origin, thickness, off, width, blank_length, bend_lines, rolling, part,
             cutouts, rack, tools, steps, press, press_name, cost, handling, run);
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
