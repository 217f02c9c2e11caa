// The picture, the film and the report as files: chosen here, written beside the window.

#pragma once

#include <string>

#include "render/ui/ui.h"
#include "scenes/window/panels/exporter.h"

namespace overbend::window {

class ExportPanel {
  public:
    // folder: where files went the last time; empty: not known
    void begin(const std::string& folder);
    const std::string& folder() const { return folder_; }
    void draw(ui::Ui& ui, const PictureRequest& seen, const SharedJob& job);
    // The keys alone, while the panel is not shown. True when one was used: its progress is to be seen.
    bool keys(ui::Ui& ui, const PictureRequest& seen, const SharedJob& job);
    void cancel() { exporter_.cancel(); }

    // Takes in what has been written; see Exporter.
    bool take() { return exporter_.take(); }
    bool busy() const { return exporter_.busy(); }

  private:
    struct Choice;
    static const std::vector<Choice>& choices();
    void write(const Choice& choice, const PictureRequest& seen, const SharedJob& job);
    void draw_progress(ui::Ui& ui);
    std::string folder_ = "out";
    Exporter exporter_;
};

}  // namespace overbend::window
