#include "scenes/window/panels/edit_panel.h"

#include <imgui.h>

#include <system_error>

#include "scenes/window/panels/edit_fields.h"
#include "scenes/window/shared/flow.h"

namespace overbend::window {

namespace {

using ui::enabled_if;
using ui::Key;
using ui::Ui;
using K = sf::Keyboard;

constexpr double before_fields = 0.46;  // part of the width
const Key undo_key{K::Z, true}, redo_key{K::Y, true}, save_key{K::S, true};

std::string with(const std::string& what, const std::string& otherwise) {
    return what.empty() ? otherwise : otherwise + ": " + what;
}

bool draw_history(CaseEdits& edits, Flow& flow) {
    bool run = false;
    if (flow.button("Undo", undo_key, with(edits.undo_words(), "Undo"), enabled_if(edits.can_undo())))
        run = edits.undo();
    if (flow.button("Redo", redo_key, with(edits.redo_words(), "Redo"), enabled_if(edits.can_redo())))
        run = edits.redo() || run;
    if (flow.button("Revert", ui::no_key, "Discards all changes; Undo brings them back",
                    enabled_if(edits.changed()))) {
        const files::Case file = edits.file();
        run = edits.change("reverted to the file", [&](files::Case& c) { c = file; }) || run;
    }
    return run;
}

// A mistake of a key that none of the fields below shows.
bool shown_below(const CaseEdits& edits) {
    const std::string& key = edits.mistake()->key;
    for (const char* beginning : {"strip", "material", "step[", "tool[", "run"})
        if (key.rfind(beginning, 0) == 0) return true;
    return false;
}

void draw_changes(Ui& ui, const CaseEdits& edits) {
    ui.words("Changes since the file was read", Ui::Weight::heading);
    const std::vector<std::string> changes = edits.changes();
    if (changes.empty()) ui.words("nothing", Ui::Weight::muted);
    for (const std::string& line : changes) ui.words(line);
}

}  // namespace

bool EditPanel::keys(Ui& ui, CaseEdits& edits) {
    bool run = false;
    if (ui.key("Undo", undo_key)) run = edits.undo();
    if (ui.key("Redo", redo_key)) run = edits.redo() || run;
    return run;
}

void EditPanel::begin_anew() {
    *this = EditPanel();
}

bool EditPanel::take_saved() {
    const bool saved = saved_;
    saved_ = false;
    return saved;
}

void EditPanel::begin_saving(const CaseEdits& edits) {
    saving_ = to_the_top_ = true;
    overwrite_.clear(), told_.clear();
    if (name_.empty()) name_ = name_for_changed(edits.file().file).string();
}

bool EditPanel::save_beside(CaseEdits& edits) {
    name_ = name_for_changed(edits.file().file).string();
    try {
        edits.save(name_);
    } catch (const std::exception& error) {
        told_ = error.what();
        failed_ = to_the_top_ = true;
        return false;
    }
    told_ = "Saved as " + name_;
    failed_ = saving_ = false;
    saved_ = true;
    return true;
}

bool EditPanel::draw(Ui& ui, CaseEdits& edits) {
    ui.words_before(before_fields);
    if (to_the_top_) ImGui::SetScrollY(0.0f);
    to_the_top_ = false;
    Flow flow(ui);
    bool run = draw_history(edits, flow);
    if (flow.button("Save...", save_key, "Writes the case with its changes to a file")) begin_saving(edits);
    draw_saving(ui, edits);
    if (edits.mistake()) {
        ui.words("This case cannot be run. The picture shows the last case that could.", Ui::Weight::alarm);
        if (!shown_below(edits)) ui.words(edits.mistake()->words(), Ui::Weight::alarm);
    }
    run = draw_strip_fields(ui, edits) || run;
    run = draw_step_fields(ui, edits, step_) || run;
    run = draw_tool_fields(ui, edits, tool_) || run;
    draw_changes(ui, edits);
    return run;
}

void EditPanel::draw_saving(Ui& ui, CaseEdits& edits) {
    if (saving_) {
        ui.words_before(0.14);
        bool write = ui.text("File", name_, "Path of the case file to write");
        ui.words_before(before_fields);
        Flow flow(ui);
        write = flow.button("Write file") || write;
        if (flow.button("Cancel saving")) saving_ = false, overwrite_.clear(), told_.clear();
        const auto save = [&] {
            failed_ = true;
            try {
                edits.save(name_);
                told_ = "Saved as " + name_;
                failed_ = saving_ = false;
                saved_ = true;
            } catch (const std::exception& error) {
                told_ = error.what();
            }
            overwrite_.clear();
        };
        std::error_code ignored;
        if (write && name_.empty()) {
            told_ = "there is no file name; give the path of a .toml file", failed_ = true;
        } else if (write && std::filesystem::exists(name_, ignored)) {
            overwrite_ = name_, told_.clear();
        } else if (write) {
            save();
        }
        if (!overwrite_.empty() && overwrite_ == name_) {
            ui.words("This file exists already: " + name_, Ui::Weight::alarm);
            if (ui.button("Overwrite", ui::no_key, "The present contents of the file are lost")) save();
        }
    }
    if (!told_.empty()) ui.words(told_, failed_ ? Ui::Weight::alarm : Ui::Weight::muted);
}

}  // namespace overbend::window
