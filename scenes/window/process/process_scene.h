// A case's whole process, run in the background and shown as a timeline.

#pragma once

#include <filesystem>
#include <memory>

#include "scenes/window/job/picture_painter.h"
#include "scenes/window/job/play_head.h"
#include "scenes/window/panels/process_panels.h"
#include "scenes/window/shared/scene.h"

namespace overbend::window {

class ProcessScene : public Scene {
  public:
    explicit ProcessScene(const Remembered& remembered);
    ~ProcessScene() override;

    // Reads and runs it, beside the window. What is wrong is shown beside what was there, never thrown.
    void open(const std::filesystem::path& file);

    // Are there changes of the case that no file has?
    bool unsaved() const;
    const ProcessPanels& panels() const;
    ProcessPanels& panels();
    std::optional<Verdict> verdict() const;  // none: no case is open

    ui::Motion motion() override;
    void draw(ui::Ui& ui, picture::Theme theme, double seconds) override;
    void remember(Remembered& remembered) const override;

    // ---- for scripts
    const PlayHead& head() const;
    const std::optional<Painted>& shown() const;  // without its pixels
    const SharedJob& job() const;
    std::optional<picture::Point> ring() const;  // of a chosen finding, px of the picture; none is drawn

  private:
    struct Inside;
    std::unique_ptr<Inside> in_;
};

}  // namespace overbend::window
