// The part and its blank as small drawings on a sheet.

#include <algorithm>

#include "render/picture/flat_layout.h"
#include "render/picture/label_room.h"
#include "render/picture/marks.h"
#include "render/picture/palette.h"
#include "render/picture/text_width.h"
#include "render/report/sheet_pages.h"

namespace overbend::report {

using namespace picture;

namespace {

const ThemeColours& light_colours() {
    return theme_colours(Theme::light);
}

// A number in a ring.
void add_number(DrawingList& list, LabelRoom& room, int number, const Point& near, double u) {
    const double size = 2.1 * u;
    const std::optional<Rect> box = find_room(room, near, size, size, u);
    if (!box) return;
    const Point centre = box->centre();
    const double away = (near - centre).norm();
    if (away > 0.75 * size)
        add_line(list, near, centre + 0.5 * size * (near - centre) / away, light_colours().muted, 0.6);
    add_shape(list, circle(centre, 0.48 * size), light_colours().page, light_colours().ink, 1.0);
    list.items.push_back(Text{std::to_string(number),
                              {centre.x(), baseline_for_middle(centre.y(), u)},
                              Across::middle,
                              u,
                              light_colours().ink,
                              Weight::bold,
                              std::nullopt});
    room.taken.push_back(*box);
}

}  // namespace

void add_part(DrawingList& list, const Rect& box, const ShownPart& part, double thickness, double u) {
    const Rect all = bounds_of(part.line);
    const double aside = 3.4 * u;
    const double scale = std::min((box.width - 2.0 * aside) / std::max(all.width, thickness),
                                  (box.height - 2.0 * aside) / std::max(all.height, thickness));
    const Point middle = all.centre();
    const auto on_page = [&](const Point& p) {
        return Point(box.centre().x() + scale * (p.x() - middle.x()),
                     box.centre().y() - scale * (p.y() - middle.y()));
    };
    std::vector<Point> line;
    for (const Point& p : part.line) line.push_back(on_page(p));
    const double wide = std::max(scale * thickness, 1.5);
    add_line(list, polyline(line), light_colours().ink, wide);
    if (wide > 3.0)  // hollow, as a section is drawn
        add_line(list, polyline(line), mixed(light_colours().page, light_colours().ink, 0.25), wide - 1.6);
    LabelRoom room{box, {}, {line}};
    add_label(list, room, line.front(),
              Text{"left end", Point::Zero(), Across::left, u, light_colours().ink, Weight::bold,
                   light_colours().page});
    for (std::size_t i = 0; i < part.bend_middle.size(); ++i)
        add_number(list, room, static_cast<int>(i) + 1, on_page(part.bend_middle[i]), u);
    for (std::size_t i = 0; i < part.flats.size(); ++i)
        add_label(list, room, on_page(part.flat_middle[i]),
                  Text{short_number(part.flats[i]), Point::Zero(), Across::left, u, light_colours().ink,
                       Weight::normal, light_colours().page});
    add_scale_bar(list, {box.x, box.bottom() - 0.3 * u}, scale, 0.2 * box.width, u);
}

void add_blank(DrawingList& list, const Rect& box, double length, const std::vector<double>& at, double u) {
    const double scale = box.width / length;
    const Rect strip{box.x, box.y + 2.3 * u, box.width, box.height - 4.6 * u};
    add_shape(list, rectangle(strip), mixed(light_colours().page, light_colours().ink, 0.07),
              light_colours().ink, 1.0);
    double above = -1e300, below = -1e300;  // right ends of the words already placed
    for (std::size_t i = 0; i < at.size(); ++i) {
        const double x = box.x + scale * at[i];
        add_line(list, {x, strip.y - 2.0}, {x, strip.bottom() + 2.0}, light_colours().ink, 1.0,
                 {6.0, 2.5, 1.5, 2.5});
        const std::string number = std::to_string(i + 1), distance = fixed(at[i], 1);
        const double half = 0.5 * text_width(number, u, Weight::bold), wide = 0.5 * text_width(distance, u);
        if (x - half > above + 0.2 * u) {
            add_text(list, number, {x, strip.y - 0.6 * u}, u, light_colours().ink, Across::middle,
                     Weight::bold);
            above = x + half;
        }
        if (x - wide > below + 0.6 * u && x - wide >= box.x && x + wide <= box.right()) {
            add_text(list, distance, {x, strip.bottom() + 1.4 * u}, u, light_colours().ink, Across::middle);
            below = x + wide;
        }
    }
}

}  // namespace overbend::report
