// The springback bench: one strip, one bend, pressed by hand and let go.

#pragma once

#include <memory>
#include <optional>

#include "scenes/window/bench/state.h"
#include "scenes/window/shared/scene.h"

namespace overbend::scenes {

struct BenchTold;

class BenchScene : public Scene {
  public:
    explicit BenchScene(const Remembered& remembered);
    ~BenchScene() override;

    render::Motion motion() override;
    void draw(render::Ui& ui, render::Theme theme, double seconds) override;
    void remember(Remembered& remembered) const override;

    // ---- for checks
    const BenchState& state() const;
    const BenchTold& told() const;  // the last result among it

  private:
    struct Inside;
    std::unique_ptr<Inside> in_;
};

}  // namespace overbend::scenes
