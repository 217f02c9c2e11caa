// All of the window: a row of what belongs to the whole, and the scene that is shown below it.

#pragma once

#include <filesystem>
#include <optional>
#include <string>
#include <vector>

#include "scenes/window/bench/bench_scene.h"
#include "scenes/window/process/process_scene.h"

namespace overbend::window {

class MainShow : public ui::Show {
  public:
    // Begins with what is remembered. The case is opened if one is named.
    MainShow(const Remembered& remembered, const std::optional<std::filesystem::path>& file);

    ui::Motion motion() override;
    void draw(ui::Ui& ui, int width, int height, double seconds) override;
    void dropped(const std::vector<std::filesystem::path>& files) override;
    picture::Theme theme() const override;
    std::string title() const override;
    bool may_close() override;
    bool over() const override { return over_; }

    Remembered remembered() const;
    ProcessScene& process() { return process_; }
    BenchScene& bench() { return bench_; }

  private:
    void draw_row(ui::Ui& ui);
    void draw_verdict(ui::Ui& ui);
    void draw_leaving(ui::Ui& ui);
    void draw_help(ui::Ui& ui);
    Remembered remembered_;
    ProcessScene process_;
    BenchScene bench_;
    bool help_ = false, over_ = false;
    bool leaving_ = false;  // asked what is to become of unsaved changes, or of a file that is being written
};

}  // namespace overbend::window
