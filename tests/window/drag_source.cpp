#include "tests/window/drag_source.h"

#include <X11/Xatom.h>
#include <X11/Xlib.h>

namespace overbend::tests {

namespace {

struct Source {
    Display* display = XOpenDisplay(nullptr);
    ::Window window = XCreateSimpleWindow(display, DefaultRootWindow(display), 0, 0, 10, 10, 0, 0, 0);
    ~Source() { XCloseDisplay(display); }
    Atom atom(const std::string& name) const { return XInternAtom(display, name.c_str(), False); }

    // The first value of a property; 0 without it.
    long value(::Window of, const char* name) const {
        Atom type = None;
        int format = 0;
        unsigned long items = 0, left = 0;
        unsigned char* data = nullptr;
        XGetWindowProperty(display, of, atom(name), 0, 1, False, AnyPropertyType, &type, &format, &items,
                           &left, &data);
        const long found = items > 0 ? *reinterpret_cast<long*>(data) : 0;
        if (data != nullptr) XFree(data);
        return found;
    }

    void send(::Window to, ::Window named, const char* message, long b, long c, long d, long e) const {
        XEvent event{};
        event.xclient.type = ClientMessage;
        event.xclient.window = named;
        event.xclient.message_type = atom(message);
        event.xclient.format = 32;
        const long data[] = {static_cast<long>(window), b, c, d, e};
        for (int i = 0; i < 5; ++i) event.xclient.data.l[i] = data[i];
        XSendEvent(display, to, False, NoEventMask, &event);
        XFlush(display);
    }

    // Answers what is asked until a message of this kind comes; its second value, -1 when it does not come.
    long wait_for(const char* message, const std::string& type, const std::string& list,
                  const std::function<void()>& turn) const {
        for (int tries = 0; tries < 200; ++tries) {
            turn();
            while (XPending(display) > 0) {
                XEvent event;
                XNextEvent(display, &event);
                if (event.type == ClientMessage && event.xclient.message_type == atom(message))
                    return event.xclient.data.l[1];
                if (event.type == SelectionRequest) answer(event.xselectionrequest, type, list);
            }
        }
        return -1;
    }

    void answer(const XSelectionRequestEvent& asked, const std::string& type, const std::string& list) const {
        XChangeProperty(display, asked.requestor, asked.property, atom(type), 8, PropModeReplace,
                        reinterpret_cast<const unsigned char*>(list.data()), static_cast<int>(list.size()));
        XEvent event{};
        event.xselection.type = SelectionNotify;
        event.xselection.requestor = asked.requestor;
        event.xselection.selection = asked.selection;
        event.xselection.target = asked.target;
        event.xselection.property = asked.property;
        event.xselection.time = asked.time;
        XSendEvent(display, asked.requestor, False, NoEventMask, &event);
        XFlush(display);
    }
};

}  // namespace

DropOutcome drop_on(sf::WindowHandle window, const std::string& type, const std::string& list,
                    const std::function<void()>& turn) {
    DropOutcome outcome;
    const Source source;
    const auto proxy = static_cast<::Window>(source.value(window, "XdndProxy"));
    outcome.aware = source.value(window, "XdndAware") >= 5 && proxy != 0 &&
                    static_cast<::Window>(source.value(proxy, "XdndProxy")) == proxy;
    if (!outcome.aware) return outcome;
    XSetSelectionOwner(source.display, source.atom("XdndSelection"), source.window, CurrentTime);
    source.send(proxy, window, "XdndEnter", 5L << 24, static_cast<long>(source.atom(type)), 0, 0);
    source.send(proxy, window, "XdndPosition", 0, 0, CurrentTime,
                static_cast<long>(source.atom("XdndActionCopy")));
    outcome.accepted = source.wait_for("XdndStatus", type, list, turn) == 1;
    source.send(proxy, window, "XdndDrop", 0, CurrentTime, 0, 0);
    outcome.finished = source.wait_for("XdndFinished", type, list, turn) == 1;
    return outcome;
}

}  // namespace overbend::tests
