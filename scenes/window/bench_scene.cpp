#include "scenes/window/bench_scene.h"

namespace overbend::scenes {

struct BenchScene::Inside {};

BenchScene::BenchScene(const Remembered&) : in_(std::make_unique<Inside>()) {}
BenchScene::~BenchScene() = default;

render::Motion BenchScene::motion() {
    return render::Motion::still;
}

void BenchScene::draw(render::Ui&, render::Theme, double) {}

void BenchScene::remember(Remembered&) const {}

}  // namespace overbend::scenes
