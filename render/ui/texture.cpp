#include "render/ui/texture.h"

// before the headers of OpenGL, which need its platform's words
#include <SFML/Window/Context.hpp>
//
#include <GL/gl.h>
#include <imgui.h>

#include <cstdint>

namespace overbend::ui {

Texture::~Texture() {
    if (name_ != 0 && sf::Context::getActiveContext() != nullptr) glDeleteTextures(1, &name_);
}

void Texture::show(const picture::Pixels& pixels) {
    const bool another_size = pixels.width != width_ || pixels.height != height_;
    if (name_ == 0) glGenTextures(1, &name_);
    glBindTexture(GL_TEXTURE_2D, name_);
    glPixelStorei(GL_UNPACK_ALIGNMENT, 4);
    // Cairo's pixels go in as they are: blue first, the fourth byte left out.
    if (another_size) {
        width_ = pixels.width, height_ = pixels.height;
        glTexParameteri(GL_TEXTURE_2D, GL_TEXTURE_MIN_FILTER, GL_NEAREST);
        glTexParameteri(GL_TEXTURE_2D, GL_TEXTURE_MAG_FILTER, GL_NEAREST);
        glTexImage2D(GL_TEXTURE_2D, 0, GL_RGB, width_, height_, 0, GL_BGRA, GL_UNSIGNED_INT_8_8_8_8_REV,
                     pixels.bgra.data());
    } else {
        glTexSubImage2D(GL_TEXTURE_2D, 0, 0, 0, width_, height_, GL_BGRA, GL_UNSIGNED_INT_8_8_8_8_REV,
                        pixels.bgra.data());
    }
}

void Texture::show(const picture::DrawingList& list) {
    picture::paint(list, pixels_);
    show(pixels_);
}

void* Texture::handle() const {
    // ImGui carries it through as a pointer, and its OpenGL backend makes a name of it again.
    return reinterpret_cast<void*>(static_cast<std::intptr_t>(name_));  // NOLINT(performance-no-int-to-ptr)
}

// It covers what lies below, so nothing is blended: half of the work where the processor does the painting.
void Texture::add_to(ImDrawList& list, const picture::Point& corner, double times) const {
    if (width_ == 0) return;
    const ImVec2 low(static_cast<float>(corner.x()), static_cast<float>(corner.y()));
    const ImVec2 high(low.x + static_cast<float>(times * width_),
                      low.y + static_cast<float>(times * height_));
    list.AddCallback([](const ImDrawList*, const ImDrawCmd*) { glDisable(GL_BLEND); }, nullptr);
    list.AddImage(handle(), low, high);
    list.AddCallback([](const ImDrawList*, const ImDrawCmd*) { glEnable(GL_BLEND); }, nullptr);
}

}  // namespace overbend::ui
