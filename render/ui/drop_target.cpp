#include "render/ui/drop_target.h"

#include <X11/Xatom.h>
#include <X11/Xlib.h>

#include <algorithm>

namespace overbend::ui {

namespace {

constexpr long version = 5;

// An error of the window that something was dragged from, when it is gone meanwhile, would end the program:
// those of our own connection are let pass.
Display* ours = nullptr;
XErrorHandler handler_before = nullptr;
int let_pass(Display* display, XErrorEvent* error) {
    return display == ours || handler_before == nullptr ? 0 : handler_before(display, error);
}

int hex(char c) {
    if (c >= '0' && c <= '9') return c - '0';
    if (c >= 'a' && c <= 'f') return c - 'a' + 10;
    if (c >= 'A' && c <= 'F') return c - 'A' + 10;
    return -1;
}

std::string decoded(const std::string& text) {
    std::string plain;
    for (std::size_t i = 0; i < text.size(); ++i) {
        const bool code =
            text[i] == '%' && i + 2 < text.size() && hex(text[i + 1]) >= 0 && hex(text[i + 2]) >= 0;
        plain += code ? static_cast<char>(16 * hex(text[i + 1]) + hex(text[i + 2])) : text[i];
        if (code) i += 2;
    }
    return plain;
}

}  // namespace

struct DropTarget::Inside {
    Display* display = nullptr;
    ::Window target = 0;  // SFML's
    ::Window proxy = 0;   // ours
    ::Window source = 0;  // what is dragged comes from there; 0: nothing is
    bool wanted = false;  // it can be had as a list of URIs
    std::vector<std::filesystem::path> dropped;

    Atom atom(const char* name) const { return XInternAtom(display, name, False); }

    void set(::Window window, const char* name, Atom type, long value) const {
        XChangeProperty(display, window, atom(name), type, 32, PropModeReplace,
                        reinterpret_cast<const unsigned char*>(&value), 1);
    }

    // Whole, whatever its length.
    std::string property(::Window window, Atom name, Atom& type) const {
        std::string bytes;
        type = None;
        unsigned long left = 1;
        while (left > 0) {
            int format = 0;
            unsigned long items = 0;
            unsigned char* data = nullptr;
            const long from = static_cast<long>(bytes.size() / 4);
            if (XGetWindowProperty(display, window, name, from, 1 << 16, False, AnyPropertyType, &type,
                                   &format, &items, &left, &data) != Success ||
                data == nullptr)
                break;
            // Items of 32 bits come as longs, of which only their number matters here.
            const std::size_t size = items * (format == 32 ? sizeof(long) : format == 16 ? 2 : 1);
            bytes.append(reinterpret_cast<const char*>(data), size);
            XFree(data);
            if (format != 8) break;
        }
        return bytes;
    }

    void send(const char* message, long second, long third, long fourth, long fifth) const {
        XEvent event{};
        event.xclient.type = ClientMessage;
        event.xclient.display = display;
        event.xclient.window = source;
        event.xclient.message_type = atom(message);
        event.xclient.format = 32;
        const long data[] = {static_cast<long>(target), second, third, fourth, fifth};
        std::copy(std::begin(data), std::end(data), std::begin(event.xclient.data.l));
        XSendEvent(display, source, False, NoEventMask, &event);
    }

    bool offers_uris(const XClientMessageEvent& enter) const {
        const Atom uris = atom("text/uri-list");
        if ((enter.data.l[1] & 1) == 0)
            return std::any_of(enter.data.l + 2, enter.data.l + 5,
                               [&](long type) { return static_cast<Atom>(type) == uris; });
        Atom type = None;
        const std::string bytes = property(source, atom("XdndTypeList"), type);
        const auto* types = reinterpret_cast<const long*>(bytes.data());
        return std::any_of(types, types + bytes.size() / sizeof(long),
                           [&](long offered) { return static_cast<Atom>(offered) == uris; });
    }

    void message(const XClientMessageEvent& m) {
        if (m.message_type == atom("XdndEnter")) {
            source = static_cast<::Window>(m.data.l[0]);
            wanted = offers_uris(m);
        } else if (m.message_type == atom("XdndPosition")) {
            send("XdndStatus", wanted ? 1 : 0, 0, 0, wanted ? static_cast<long>(atom("XdndActionCopy")) : 0);
        } else if (m.message_type == atom("XdndLeave")) {
            source = 0;
        } else if (m.message_type == atom("XdndDrop")) {
            if (wanted)
                XConvertSelection(display, atom("XdndSelection"), atom("text/uri-list"),
                                  atom("XdndSelection"), proxy, static_cast<Time>(m.data.l[2]));
            else
                send("XdndFinished", 0, 0, 0, 0);
        }
    }

    void received(const XSelectionEvent& s) {
        Atom type = None;
        const std::string list = s.property == None ? "" : property(proxy, s.property, type);
        for (const std::filesystem::path& file : files_of_uris(list)) dropped.push_back(file);
        send("XdndFinished", list.empty() ? 0 : 1, static_cast<long>(atom("XdndActionCopy")), 0, 0);
        source = 0;
    }
};

DropTarget::DropTarget(sf::WindowHandle window) : in_(std::make_unique<Inside>()) {
    in_->display = XOpenDisplay(nullptr);
    if (in_->display == nullptr) return;
    ours = in_->display;
    const XErrorHandler before = XSetErrorHandler(let_pass);
    if (before != let_pass) handler_before = before;
    in_->target = window;
    in_->proxy = XCreateWindow(in_->display, DefaultRootWindow(in_->display), 0, 0, 1, 1, 0, CopyFromParent,
                               InputOnly, nullptr, 0, nullptr);
    for (const ::Window w : {in_->target, in_->proxy}) {
        in_->set(w, "XdndAware", XA_ATOM, version);
        in_->set(w, "XdndProxy", XA_WINDOW, static_cast<long>(in_->proxy));
    }
    XFlush(in_->display);
}

DropTarget::~DropTarget() {
    if (in_->display == nullptr) return;
    XDestroyWindow(in_->display, in_->proxy);
    XCloseDisplay(in_->display);
    ours = nullptr;
}

std::vector<std::filesystem::path> DropTarget::take() {
    if (in_->display == nullptr) return {};
    while (XPending(in_->display) > 0) {
        XEvent event;
        XNextEvent(in_->display, &event);
        if (event.type == ClientMessage) in_->message(event.xclient);
        if (event.type == SelectionNotify) in_->received(event.xselection);
    }
    XFlush(in_->display);
    std::vector<std::filesystem::path> dropped;
    dropped.swap(in_->dropped);
    return dropped;
}

std::vector<std::filesystem::path> files_of_uris(const std::string& list) {
    std::vector<std::filesystem::path> files;
    const std::string scheme = "file://";
    for (std::size_t begin = 0; begin < list.size();) {
        std::size_t end = list.find_first_of("\r\n", begin);
        if (end == std::string::npos) end = list.size();
        const std::string line = list.substr(begin, end - begin);
        begin = end + 1;
        if (line.compare(0, scheme.size(), scheme) != 0) continue;
        const std::size_t path = line.find('/', scheme.size());  // behind the host, which may be missing
        if (path != std::string::npos) files.emplace_back(decoded(line.substr(path)));
    }
    return files;
}

}  // namespace overbend::ui
