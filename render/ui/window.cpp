#include "render/ui/window.h"

#include <backends/imgui_impl_opengl2.h>
#include <imgui.h>

#include <SFML/System/Sleep.hpp>
#include <algorithm>
#include <stdexcept>
//
#include <GL/gl.h>

#include "render/ui/imgui_events.h"
#include "render/ui/look.h"

namespace overbend::ui {

namespace {

constexpr double letter = 15.0;                  // px, of words on an ordinary screen
constexpr int settling = 3;                      // frames after an event
const sf::Time shortest = sf::milliseconds(15);  // between two frames
const sf::Time pause_between_looks = sf::milliseconds(8);

bool is_stroke(const sf::Event& event) {
    return event.type == sf::Event::KeyPressed || event.type == sf::Event::MouseButtonPressed ||
           event.type == sf::Event::MouseButtonReleased;
}

// Of what has been painted and is not shown yet.
picture::Pixels pixels_of(const sf::Vector2u& size) {
    picture::Pixels shot;
    shot.width = static_cast<int>(size.x), shot.height = static_cast<int>(size.y);
    const std::size_t row = 4 * static_cast<std::size_t>(shot.width);
    std::vector<std::uint8_t> upside_down(row * static_cast<std::size_t>(shot.height));
    glReadPixels(0, 0, shot.width, shot.height, GL_BGRA, GL_UNSIGNED_BYTE, upside_down.data());
    shot.bgra.reserve(upside_down.size());
    for (int y = shot.height - 1; y >= 0; --y) {
        const auto from = upside_down.begin() + static_cast<std::ptrdiff_t>(row) * y;
        shot.bgra.insert(shot.bgra.end(), from, from + static_cast<std::ptrdiff_t>(row));
    }
    return shot;
}

}  // namespace

struct Window::Imgui {
    explicit Imgui(double scale) {
        IMGUI_CHECKVERSION();
        context = ImGui::CreateContext();
        ImGuiIO& io = ImGui::GetIO();
        io.IniFilename = nullptr;
        io.MouseDoubleClickTime = 0.6f;  // a few frames of a slow machine, too
        io.ConfigFlags |= ImGuiConfigFlags_NavEnableKeyboard;
        connect_keys();
        set_colours(picture::Theme::light);
        set_sizes(letter * scale);
        ImGui_ImplOpenGL2_Init();
    }
    ~Imgui() {
        ImGui_ImplOpenGL2_Shutdown();
        ImGui::DestroyContext(context);
    }
    Imgui(const Imgui&) = delete;
    Imgui& operator=(const Imgui&) = delete;
    ImGuiContext* context = nullptr;
};

Window::Window(const WindowOptions& options) : title_(options.title) {
    const sf::VideoMode screen = sf::VideoMode::getDesktopMode();
    const sf::VideoMode mode(std::min(static_cast<unsigned>(options.width), screen.width),
                             std::min(static_cast<unsigned>(options.height), screen.height));
    window_.create(mode, options.title, sf::Style::Default, sf::ContextSettings(0, 0, 0, 2, 1));
    // In the middle; SFML 2.5 works out its height from the screen's width.
    window_.setPosition(
        {static_cast<int>(screen.width - mode.width) / 2, static_cast<int>(screen.height - mode.height) / 2});
    if (!window_.isOpen() || !window_.setActive(true))
        throw std::runtime_error("no window with OpenGL could be opened on this display");
    imgui_ = std::make_unique<Imgui>(options.scale);
    drops_ = std::make_unique<DropTarget>(window_.getSystemHandle());
}

Window::~Window() {
    window_.setActive(true);
    imgui_.reset();
}

void Window::run(Show& show) {
    while (turn(show)) {
    }
}

bool Window::turn(Show& show) {
    // A press or release ends what one frame takes in, or the next one would hide it.
    for (sf::Event event; window_.pollEvent(event);) {
        handle(event);
        if (is_stroke(event)) break;
    }
    if (closing_) open_ = !show.may_close();
    closing_ = false;
    if (!open_ || show.over()) return false;
    const std::vector<std::filesystem::path> files = drops_->take();
    if (!files.empty()) {
        show.dropped(files);
        due_ = settling;
    }
    if (show.motion() == Motion::moving) due_ = std::max(due_, 1);
    if (due_ == 0) {
        sf::sleep(pace_ == Pace::steady ? pause_between_looks : sf::milliseconds(1));
        return true;
    }
    const sf::Time spent = since_frame_.getElapsedTime();
    if (pace_ == Pace::steady && spent < shortest) sf::sleep(shortest - spent);
    frame(show);
    --due_;
    return true;
}

void Window::handle(const sf::Event& event) {
    if (event.type == sf::Event::Closed) closing_ = true;
    tell_imgui(event);
    due_ = settling;
}

void Window::frame(Show& show, picture::Pixels* shot) {
    const double seconds = std::clamp<double>(since_frame_.restart().asSeconds(), 1e-4, 0.25);
    window_.setActive(true);
    if (show.theme() != theme_) set_colours(theme_ = show.theme());
    if (show.title() != title_) {
        title_ = show.title();
        window_.setTitle(sf::String::fromUtf8(title_.begin(), title_.end()));
    }
    const sf::Vector2u size = window_.getSize();
    ImGuiIO& io = ImGui::GetIO();
    io.DisplaySize = {static_cast<float>(size.x), static_cast<float>(size.y)};
    io.DeltaTime = static_cast<float>(seconds);
    ImGui_ImplOpenGL2_NewFrame();
    ImGui::NewFrame();
    ui_.begin_frame();
    show.draw(ui_, static_cast<int>(size.x), static_cast<int>(size.y), seconds);
    ImGui::Render();
    ++frames_;
    if (pace_ == Pace::unbounded && shot == nullptr) return;
    const picture::Colour page = picture::theme_colours(theme_).page;
    glViewport(0, 0, static_cast<int>(size.x), static_cast<int>(size.y));
    glClearColor(static_cast<float>(page.red), static_cast<float>(page.green), static_cast<float>(page.blue),
                 1.0f);
    glClear(GL_COLOR_BUFFER_BIT);
    ImGui_ImplOpenGL2_RenderDrawData(ImGui::GetDrawData());
    if (shot != nullptr) *shot = pixels_of(size);
    window_.display();
}

picture::Pixels Window::screenshot(Show& show) {
    picture::Pixels shot;
    frame(show, &shot);
    return shot;
}

}  // namespace overbend::ui
