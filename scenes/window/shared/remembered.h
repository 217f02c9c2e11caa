// What the window remembers from one time to the next, in $XDG_STATE_HOME/overbend/window.json or else
// ~/.local/state/overbend/window.json.

#pragma once

#include <filesystem>
#include <string>
#include <vector>

namespace overbend::window {

enum class SceneKind { process, bench };
// Beside the picture of the process.
enum class Panel { none, edits, findings, figures, exports };

// What stood on the bench, in mm and MPa. The reader checks the values.
struct RememberedMetal {
    std::string card;
    double modulus = 0.0, yield = 0.0, hardening = 0.0;
};
struct RememberedBench {
    bool pure = false;
    double thickness = 0.0, nose_radius = 0.0, opening = 0.0, friction = 0.0;
    double way = 0.0;                     // part of the deepest
    double wanted = 0.0;                  // degrees, free
    std::vector<RememberedMetal> metals;  // none: nothing is remembered
};

struct Remembered {
    int width = 1280, height = 720;  // px, of the window
    bool dark = false;               // theme for a dark room
    bool plastic_strain = false;     // layers by plastic strain instead of hoop stress
    bool lens = true;
    bool lens_at_pointer = false;   // instead of at the bend
    bool charts = true;             // figures and force curve in the picture
    double springback_scale = 1.0;  // 1 to 20
    double speed = 1.0;             // of playing, against the film's
    std::string last_case;          // whole path; empty: none
    std::string export_folder;      // where pictures, films and reports went; empty: nowhere yet
    SceneKind scene = SceneKind::process;
    Panel panel = Panel::none;
    RememberedBench bench;
};

// Where it stands; empty when the environment names no place for it.
std::filesystem::path remembered_file();

// Values that are missing or out of their range, or a file that cannot be read, are as above: what is
// remembered is a comfort and never an error.
Remembered read_remembered(const std::filesystem::path& file);
// Written whole or not at all; a place that cannot be written is left alone.
void write_remembered(const std::filesystem::path& file, const Remembered& remembered);

}  // namespace overbend::window
