#include "render/window/display.h"

#include <X11/Xlib.h>
#include <X11/Xresource.h>

#include <algorithm>
#include <cstdlib>
#include <memory>

namespace overbend::render {

namespace {

struct CloseDisplay {
    void operator()(Display* display) const { XCloseDisplay(display); }
};
using OpenDisplay = std::unique_ptr<Display, CloseDisplay>;

// Of the X resources, where a desktop keeps its density.
double dots_per_inch() {
    const OpenDisplay display(XOpenDisplay(nullptr));
    if (!display) return 0.0;
    XrmInitialize();
    const char* resources = XResourceManagerString(display.get());
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

std::optional<std::string> no_display() {
    if (OpenDisplay(XOpenDisplay(nullptr))) return {};
    const char* name = std::getenv("DISPLAY");
    if (name == nullptr || *name == '\0')
        return "there is no display here (the environment variable DISPLAY is not set)";
    return "the display \"" + std::string(name) + "\" (environment variable DISPLAY) does not answer";
}

double display_scale() {
    double scale = 0.0;
    if (const char* given = std::getenv("OVERBEND_SCALE")) scale = std::strtod(given, nullptr);
    if (!(scale > 0.0)) scale = dots_per_inch() / 96.0;
    return scale > 0.0 ? std::clamp(scale, 0.5, 4.0) : 1.0;
}

}  // namespace overbend::render
