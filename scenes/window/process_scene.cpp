#include "scenes/window/process_scene.h"

namespace overbend::scenes {

struct ProcessScene::Inside {
    std::filesystem::path file;
};

ProcessScene::ProcessScene(const Remembered&) : in_(std::make_unique<Inside>()) {}
ProcessScene::~ProcessScene() = default;

void ProcessScene::open(const std::filesystem::path& file) {
    in_->file = file;
}

render::Motion ProcessScene::motion() {
    return render::Motion::still;
}

void ProcessScene::draw(render::Ui& ui, render::Theme, double) {
    ui.words(in_->file.string());
}

void ProcessScene::remember(Remembered&) const {}

}  // namespace overbend::scenes
