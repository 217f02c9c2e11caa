// The springback bench: one strip, one bend, pressed and released by hand.

#pragma once

#include <memory>

#include "scenes/window/bench/state.h"
#include "scenes/window/shared/scene.h"

namespace overbend::window {

struct BenchTold;

class BenchScene : public Scene {
  public:
    explicit BenchScene(const Remembered& remembered);
    ~BenchScene() override;

    ui::Motion motion() override;
    void draw(ui::Ui& ui, picture::Theme theme, double seconds) override;
    void remember(Remembered& remembered) const override;

    // ---- for checks
    const BenchState& state() const;
    const BenchTold& told() const;  // the last result among it

  private:
    struct Inside;
    std::unique_ptr<Inside> in_;
};

}  // namespace overbend::window
