// All of the window: a row of what belongs to the whole, and the scene that is shown below it.

#pragma once

#include <filesystem>
#include <optional>
#include <string>
#include <vector>

#include "scenes/window/bench/bench_scene.h"
#include "scenes/window/process/process_scene.h"

namespace overbend::scenes {

class MainShow : public render::Show {
  public:
    // Begins with what is remembered. The case is opened if one is named.
    MainShow(const Remembered& remembered, const std::optional<std::filesystem::path>& file);

    render::Motion motion() override;
    void draw(render::Ui& ui, int width, int height, double seconds) override;
    void dropped(const std::vector<std::filesystem::path>& files) override;
    render::Theme theme() const override;
    std::string title() const override;
    bool may_close() override;
    bool over() const override { return over_; }

    Remembered remembered() const;
    ProcessScene& process() { return process_; }
    BenchScene& bench() { return bench_; }

  private:
    void draw_row(render::Ui& ui);
    void draw_leaving(render::Ui& ui);
    void draw_help(render::Ui& ui);
    Remembered remembered_;
    ProcessScene process_;
    BenchScene bench_;
    bool help_ = false, over_ = false;
    bool leaving_ = false;  // asked what is to become of unsaved changes
};

}  // namespace overbend::scenes
