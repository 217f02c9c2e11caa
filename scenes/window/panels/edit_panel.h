// The case as it is pressed, to be changed: strip, steps, tools; what differs from its file; saving.

#pragma once

#include <string>

#include "render/ui/ui.h"
#include "scenes/window/panels/case_edits.h"

namespace overbend::window {

class EditPanel {
  public:
    // True when the job is to be run again.
    bool draw(ui::Ui& ui, CaseEdits& edits);
    // The keys alone, while the panel is not shown: undo and redo.
    static bool keys(ui::Ui& ui, CaseEdits& edits);

    // Saves it beside its file, under a name that no file has. False: it cannot be; the panel says why.
    bool save_beside(CaseEdits& edits);
    // Asks for a name for the case.
    void begin_saving(const CaseEdits& edits);
    // Whether a file was written since this was asked last.
    bool take_saved();
    // The case that is edited is another one.
    void begin_anew();

  private:
    void draw_saving(ui::Ui& ui, CaseEdits& edits);
    bool to_the_top_ = false;  // where saving stands
    int step_ = 0;             // the chosen one; -1: none
    int tool_ = -1;            // the same
    bool saving_ = false;
    std::string name_;
    std::string overwrite_;  // a file that is there and would be written over
    std::string told_;       // how saving went
    bool failed_ = false;
    bool saved_ = false;
};

}  // namespace overbend::window
