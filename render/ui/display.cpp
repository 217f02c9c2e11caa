#include "render/ui/display.h"

#include <X11/Xlib.h>
#include <X11/Xresource.h>

#include <algorithm>
#include <cstdlib>
#include <memory>

namespace overbend::ui {

namespace {

// Of the X resources, where a desktop keeps its density.
double dots_per_inch(Display* display) {
    XrmInitialize();
    const char* resources = XResourceManagerString(display);
    if (resources == nullptr) return 0.0;
    XrmDatabase database = XrmGetStringDatabase(resources);
    char* type = nullptr;
    XrmValue value;
    double dots = 0.0;
    if (XrmGetResource(database, "Xft.dpi", "Xft.Dpi", &type, &value) != 0 && value.addr != nullptr)
        dots = std::strtod(value.addr, nullptr);
    XrmDestroyDatabase(database);
    return dots;
}

}  // namespace

struct Screen::Inside {
    Display* display = XOpenDisplay(nullptr);
};

Screen::Screen() : in_(std::make_unique<Inside>()) {}

Screen::~Screen() {
    if (in_->display != nullptr) XCloseDisplay(in_->display);
}

std::optional<std::string> Screen::why_not() const {
    if (in_->display != nullptr) return {};
    const char* name = std::getenv("DISPLAY");
    if (name == nullptr || *name == '\0')
        return "there is no display here (the environment variable DISPLAY is not set)";
    return "the display \"" + std::string(name) + "\" (environment variable DISPLAY) does not answer";
}

double Screen::scale() const {
    double scale = 0.0;
    if (const char* given = std::getenv("OVERBEND_SCALE")) scale = std::strtod(given, nullptr);
    if (!(scale > 0.0) && in_->display != nullptr) scale = dots_per_inch(in_->display) / 96.0;
    return scale > 0.0 ? std::clamp(scale, 0.5, 4.0) : 1.0;
}

}  // namespace overbend::ui
