// Around the stage: the panels themselves, the head with the step's name, the caption.

#include "render/picture/stage_parts.h"
#include "render/picture/text_width.h"

namespace overbend::picture {

namespace {

// Words up to the first colon, with it; none when there is no colon.
std::string lead_of(const std::string& caption) {
    const size_t colon = caption.find(':');
    return colon == std::string::npos ? "" : caption.substr(0, colon + 1);
}

void add_caption(Sheet& sheet) {
    const double u = sheet.unit();
    const double size = 1.2 * u;
    const Rect& box = sheet.layout.caption;
    const std::string lead = fitted(lead_of(sheet.info.caption), size, 0.6 * box.width, Weight::bold);
    std::string rest = sheet.info.caption.substr(lead_of(sheet.info.caption).size());
    if (!rest.empty() && rest.front() == ' ') rest.erase(0, 1);
    const double indent = lead.empty() ? 0.0 : text_width(lead + " ", size, Weight::bold);
    const std::vector<std::string> lines =
        wrapped(rest, size, box.width - indent, box.width, sheet.layout.caption_lines);
    const double first = box.centre().y() - 0.5 * 1.45 * size * (static_cast<double>(lines.size()) - 1.0);
    add_text_on_middle(sheet.list, lead, {box.x, first}, size, sheet.colours.ink, Across::left, Weight::bold);
    for (size_t i = 0; i < lines.size(); ++i)
        add_text_on_middle(sheet.list, lines[i],
                           {box.x + (i == 0 ? indent : 0.0), first + 1.45 * size * static_cast<double>(i)},
                           size, sheet.colours.ink);
}

}  // namespace

void add_panels(Sheet& sheet) {
    if (sheet.info.backdrop == Backdrop::transparent) return;
    const double corner = 0.6 * sheet.unit();
    add_fill(sheet.list, rectangle(sheet.layout.stage), sheet.colours.stage);
    if (sheet.info.charts == Charts::shown)
        add_fill(sheet.list, rectangle(sheet.layout.panel, corner), sheet.colours.panel);
}

void add_head_and_caption(Sheet& sheet) {
    const double u = sheet.unit();
    const Rect& head = sheet.layout.head;
    const double middle = head.centre().y();
    add_line(sheet.list, rectangle(sheet.layout.stage), sheet.colours.rule, sheet.layout.line);

    double name_at = head.x;
    if (sheet.info.step_tag == StepTag::shown) {
        const std::string number =
            "step " + std::to_string(sheet.info.step_number) + " of " + std::to_string(sheet.info.step_count);
        const Rect badge{head.x, middle - 0.95 * u, text_width(number, 1.1 * u, Weight::bold) + 1.2 * u,
                         1.9 * u};
        add_fill(sheet.list, rectangle(badge, 0.4 * u), sheet.colours.accent);
        add_text_on_middle(sheet.list, number, {badge.centre().x(), middle}, 1.1 * u,
                           sheet.colours.accent_ink, Across::middle, Weight::bold);
        name_at = badge.right() + 0.7 * u;
    }
    const double room = head.right() - name_at;
    const std::string name = fitted(sheet.info.step_name, 1.5 * u, 0.6 * room, Weight::bold);
    add_text_on_middle(sheet.list, name, {name_at, middle}, 1.5 * u, sheet.colours.ink, Across::left,
                       Weight::bold);
    const double left = room - text_width(name, 1.5 * u, Weight::bold) - 1.5 * u;
    add_text_on_middle(sheet.list, fitted(sheet.info.job_title, 1.1 * u, left), {head.right(), middle},
                       1.1 * u, sheet.colours.muted, Across::right);
    add_caption(sheet);
}

}  // namespace overbend::picture
