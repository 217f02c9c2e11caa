#include "scenes/window/panels/edit_fields.h"

#include <algorithm>

#include "scenes/files/case/key_reference.h"
#include "scenes/files/case/named_asset.h"
#include "scenes/files/case/read_card.h"
#include "sim/words.h"

namespace overbend::window {

namespace {

using ui::Ui;

// As assets name them, and the file's own where it is none of them.
struct Materials {
    std::vector<std::string> names;
    bool own = false;  // the first is the file's
};

Materials materials_for(const files::Case& file) {
    static const std::vector<std::string> known = files::known_names(files::material_cards);
    Materials all{known, file.card_origin.from != files::CardOrigin::From::assets};
    if (all.own) all.names.insert(all.names.begin(), file.material.name + " (in the case)");
    return all;
}

bool draw_material(Ui& ui, CaseEdits& edits) {
    const files::Case& c = edits.draft();
    const Materials all = materials_for(edits.file());
    const bool own_now = c.card_origin.from != files::CardOrigin::From::assets;
    int chosen = 0;
    if (!own_now)
        chosen = static_cast<int>(
            std::find(all.names.begin() + (all.own ? 1 : 0), all.names.end(), c.material.name) -
            all.names.begin());
    if (!ui.choice("Material", chosen, all.names, "Material cards supplied with the program")) return false;
    return edits.change("material", [&](files::Case& next) {
        if (all.own && chosen == 0) {
            next.material = edits.file().material, next.card_origin = edits.file().card_origin;
        } else {
            next.material = files::read_card(all.names[static_cast<std::size_t>(chosen)], {});
            next.card_origin = {};
        }
    });
}

}  // namespace

void draw_mistake(Ui& ui, const CaseEdits& edits, const std::string& beginning) {
    if (beginning.empty() || !edits.mistake() || edits.mistake()->key.rfind(beginning, 0) != 0) return;
    ui.words(edits.mistake()->words(), Ui::Weight::alarm);
}

std::string tool_key(const files::Case& c, int tool) {
    if (c.tools[tool].from_rack) return "";
    int before = 0;
    for (int i = 0; i < tool; ++i) before += c.tools[i].from_rack ? 0 : 1;
    return words("tool[%d]", before + 1);
}

bool draw_strip_fields(Ui& ui, CaseEdits& edits) {
    ui.words("Strip", Ui::Weight::heading);
    bool run = draw_material(ui, edits);
    static const files::Range thick = files::key_of_case("strip", "thickness_mm").range;
    static const files::Range wide = files::key_of_case("strip", "width_mm").range;
    static const files::Range rough = files::key_of_case("run", "friction").range;
    double thickness = edits.draft().thickness;
    if (ui.number("Thickness", thickness, thick.low, thick.high, 0.05, "%.3f mm"))
        run = edits.change("thickness", [&](files::Case& c) { c.thickness = thickness; }) || run;
    double width = edits.draft().width;
    if (ui.number("Strip width", width, wide.low, wide.high, 1.0, "%.2f mm", "Along the bend lines"))
        run = edits.change("width", [&](files::Case& c) { c.width = width; }) || run;
    double friction = edits.draft().run.friction;
    if (ui.number("Friction", friction, rough.low, rough.high, 0.01, "%.3f",
                  "Between the strip and all tools"))
        run = edits.change("friction", [&](files::Case& c) { c.run.friction = friction; }) || run;
    draw_mistake(ui, edits, "strip");
    draw_mistake(ui, edits, "material");
    draw_mistake(ui, edits, "run");
    return run;
}

}  // namespace overbend::window
