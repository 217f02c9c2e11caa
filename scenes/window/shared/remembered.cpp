#include "scenes/window/shared/remembered.h"

#include <cmath>
#include <cstdlib>
#include <fstream>
#include <map>
#include <nlohmann/json.hpp>

#include "render/output/whole_file.h"

namespace overbend::window {

namespace {

using nlohmann::json;

std::string variable(const char* name) {
    const char* value = std::getenv(name);
    return value == nullptr ? "" : value;
}

template <class T>
void take(const json& from, const char* key, T& into) {
    const auto found = from.find(key);
    if (found == from.end()) return;
    try {
        found->get_to(into);
    } catch (const json::exception&) {  // of another kind: as if it were missing
    }
}

// Enumerators by their names in the file.
const std::map<std::string, Panel> panels = {{"none", Panel::none},
                                             {"case", Panel::edits},
                                             {"findings", Panel::findings},
                                             {"figures", Panel::figures},
                                             {"export", Panel::exports}};

std::string name_of(Panel panel) {
    for (const auto& [name, which] : panels)
        if (which == panel) return name;
    return "none";
}

RememberedBench bench_of(const json& from) {
    RememberedBench b;
    const auto found = from.find("bench");
    if (found == from.end() || !found->is_object()) return b;
    take(*found, "pure", b.pure);
    take(*found, "thickness", b.thickness);
    take(*found, "nose_radius", b.nose_radius);
    take(*found, "opening", b.opening);
    take(*found, "friction", b.friction);
    take(*found, "way", b.way);
    take(*found, "wanted", b.wanted);
    const auto metals = found->find("metals");
    if (metals == found->end() || !metals->is_array()) return b;
    for (const json& each : *metals) {
        if (!each.is_object()) continue;
        RememberedMetal m;
        take(each, "card", m.card);
        take(each, "modulus", m.modulus);
        take(each, "yield", m.yield);
        take(each, "hardening", m.hardening);
        b.metals.push_back(m);
    }
    return b;
}

json json_of(const RememberedBench& b) {
    json metals = json::array();
    for (const RememberedMetal& m : b.metals)
        metals.push_back(
            {{"card", m.card}, {"modulus", m.modulus}, {"yield", m.yield}, {"hardening", m.hardening}});
    return {{"pure", b.pure},       {"thickness", b.thickness}, {"nose_radius", b.nose_radius},
            {"opening", b.opening}, {"friction", b.friction},   {"way", b.way},
            {"wanted", b.wanted},   {"metals", metals}};
}

void take_within(const json& from, const char* key, double low, double high, double& into) {
    double value = into;
    take(from, key, value);
    if (std::isfinite(value) && value >= low && value <= high) into = value;
}

}  // namespace

std::filesystem::path remembered_file() {
    const std::string state = variable("XDG_STATE_HOME");
    if (!state.empty()) return std::filesystem::path(state) / "overbend" / "window.json";
    const std::string home = variable("HOME");
    if (home.empty()) return {};
    return std::filesystem::path(home) / ".local" / "state" / "overbend" / "window.json";
}

Remembered read_remembered(const std::filesystem::path& file) {
    Remembered r;
    std::ifstream in(file);
    if (file.empty() || !in) return r;
    const json from = json::parse(in, nullptr, false);
    if (!from.is_object()) return r;
    double width = r.width, height = r.height;
    take_within(from, "width", 640, 7680, width);
    take_within(from, "height", 360, 4320, height);
    r.width = static_cast<int>(width), r.height = static_cast<int>(height);
    take(from, "dark", r.dark);
    take(from, "plastic_strain", r.plastic_strain);
    take(from, "lens", r.lens);
    take(from, "lens_at_pointer", r.lens_at_pointer);
    take(from, "charts", r.charts);
    take_within(from, "springback_scale", 1.0, 20.0, r.springback_scale);
    take_within(from, "speed", 0.1, 10.0, r.speed);
    take(from, "last_case", r.last_case);
    take(from, "export_folder", r.export_folder);
    std::string scene;
    take(from, "scene", scene);
    if (scene == "bench") r.scene = SceneKind::bench;
    std::string panel;
    take(from, "panel", panel);
    if (const auto known = panels.find(panel); known != panels.end()) r.panel = known->second;
    r.bench = bench_of(from);
    return r;
}

void write_remembered(const std::filesystem::path& file, const Remembered& r) {
    if (file.empty()) return;
    const json to = {{"width", r.width},
                     {"height", r.height},
                     {"dark", r.dark},
                     {"plastic_strain", r.plastic_strain},
                     {"lens", r.lens},
                     {"lens_at_pointer", r.lens_at_pointer},
                     {"charts", r.charts},
                     {"springback_scale", r.springback_scale},
                     {"speed", r.speed},
                     {"last_case", r.last_case},
                     {"export_folder", r.export_folder},
                     {"scene", r.scene == SceneKind::bench ? "bench" : "process"},
                     {"panel", name_of(r.panel)},
                     {"bench", json_of(r.bench)}};
    try {
        std::filesystem::create_directories(file.parent_path());
        output::write_whole(file, to.dump(2, ' ', false, nlohmann::json::error_handler_t::replace) + "\n");
    } catch (const std::exception&) {  // a full disk, say: nothing is remembered
    }
}

}  // namespace overbend::window
