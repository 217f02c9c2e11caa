#include "scenes/window/job/easel.h"

#include "render/chart/section_now.h"
#include "render/picture/angle_arc.h"
#include "scenes/window/job/section_picture.h"
#include "sim/errors.h"

namespace overbend::window {

namespace {

bool same_zoom(const picture::Zoom& a, const picture::Zoom& b) {
    return a.times == b.times && a.shift == b.shift;
}

bool is_fit(const picture::Zoom& zoom) {
    return same_zoom(zoom, picture::Zoom{});
}

picture::ViewOptions view_options(const Reel& reel, int stroke) {
    picture::ViewOptions options;
    options.charts = reel.options.charts;
    options.lens = reel.options.lens;
    for (const picture::BendMark& bend : reel.film.strokes[stroke].bends)
        options.bend_lines.push_back(bend.blank_position);
    return options;
}

bool same_mark(const std::optional<SectionMark>& a, const std::optional<SectionMark>& b) {
    return a.has_value() == b.has_value() &&
           (!a || (a->blank_position == b->blank_position && a->layer == b->layer));
}

}  // namespace

bool same(const Wish& a, const Wish& b) {
    return a.reel == b.reel && a.at == b.at && a.theme == b.theme && a.colouring == b.colouring &&
           a.springback_scale == b.springback_scale && same_zoom(a.zoom, b.zoom) && a.names == b.names &&
           a.lens_at == b.lens_at && same_mark(a.mark, b.mark) && a.chart_width == b.chart_width &&
           a.chart_height == b.chart_height && a.chart_letter == b.chart_letter;
}

int layer_in(const Reel& reel, int stroke, const SectionMark& mark) {
    const files::Step& step = reel.job->c.steps[reel.steps[stroke]];
    const int layers = reel.film.strokes[stroke].recording->layers();
    const bool face_down = step.face == files::Face::down;
    return face_down == mark.face_down ? mark.layer : layers - 1 - mark.layer;
}

// Used by one thread after the other, never by two at a time.
struct Easel::Canvas {
    SharedReel reel;
    film::FrameList frames;  // looks as they are zoomed; no moments
    // Where names and magnifier of each stroke were last placed.
    struct Placed {
        picture::Zoom zoom;
        picture::View view;
    };
    std::vector<Placed> placed;

    void begin(const SharedReel& next) {
        if (next == reel) return;
        reel = next;
        frames.frames_per_second = reel->frames.frames_per_second;
        frames.looks = reel->frames.looks;
        placed.clear();
        for (const film::StrokeLook& look : frames.looks) placed.push_back({{}, look.view});
    }

    void look_at(int stroke, const Wish& wish) {
        picture::View& view = frames.looks[stroke].view;
        Placed& last = placed[stroke];
        const picture::View& fitted = reel->frames.looks[stroke].view;
        const stroke::Recording& recording = *reel->film.strokes[stroke].recording;
        const picture::PictureSize& size = reel->options.size;
        const picture::ViewOptions options = view_options(*reel, stroke);
        const std::vector<picture::BendMark>& bends = reel->frames.looks[stroke].bends;
        if (same_zoom(last.zoom, wish.zoom)) {
            view = last.view;
        } else if (is_fit(wish.zoom)) {
            view = fitted;
            last = {wish.zoom, view};
        } else if (wish.names == picture::Names::placed_anew) {
            view = picture::zoomed(recording, fitted, wish.zoom, size, options, wish.names);
            view.angles =
                picture::place_angles(recording, view, picture::lay_out(size, options.charts), bends);
            last = {wish.zoom, view};
        } else {
            const picture::Zoom on{wish.zoom.times / last.zoom.times, wish.zoom.shift - last.zoom.shift};
            view = picture::zoomed(recording, last.view, on, size, options, wish.names);
            view.angles.assign(bends.size(), std::nullopt);  // their words wait until it rests
        }
        if (view.lens && wish.lens_at) view.lens->blank_position = *wish.lens_at;
    }

    struct Drawn {
        picture::DrawingList list;
        film::Moment moment;
        picture::View view;
    };
    Drawn draw(const Wish& wish) {
        begin(wish.reel);
        Drawn drawn;
        const film::Moment& m = drawn.moment = moment_of(*reel, wish.at, wish.springback_scale);
        for (const int stroke : {m.stroke, m.from, m.to})
            if (stroke >= 0) look_at(stroke, wish);
        frames.colour_limit =
            wish.colouring == picture::Colouring::hoop_stress ? reel->stress_limit : reel->strain_limit;
        film::FilmOptions options = reel->options;
        options.theme = wish.theme;
        options.colouring = wish.colouring;
        drawn.view = frames.looks[m.stroke].view;
        drawn.list = film::draw_moment(reel->film, options, frames, m);
        if (wish.mark && film::in_a_stroke(m.passage))
            add_section_mark(drawn.list, *reel->film.strokes[m.stroke].recording, drawn_state(*reel, m),
                             drawn.view, wish.mark->blank_position, layer_in(*reel, m.stroke, *wish.mark),
                             wish.theme);
        return drawn;
    }
};

picture::DrawingList Easel::drawing_of(const Wish& wish) {
    Canvas canvas;
    return canvas.draw(wish).list;
}

namespace {

// With its path through all strokes that came before.
chart::SectionNow section_of(const Reel& reel, const film::Moment& m, const SectionMark& mark) {
    const auto face = [&](int stroke) { return reel.job->c.steps[reel.steps[stroke]].face; };
    chart::SectionNow now = chart::section_now(*reel.film.strokes[m.stroke].recording, m.at,
                                               mark.blank_position, layer_in(reel, m.stroke, mark));
    for (int k = 0; k < m.stroke; ++k)
        chart::put_before(now, *reel.film.strokes[k].recording,
                          face(k) == face(m.stroke) ? chart::Faces::as_now : chart::Faces::turned_over);
    return now;
}

// None where they have no room.
std::shared_ptr<picture::Pixels> paint_charts(const chart::SectionNow& section, const Wish& wish,
                                              const std::shared_ptr<picture::Pixels>& into) {
    try {
        picture::paint(draw_section(section, wish.chart_width, wish.chart_height, wish.chart_letter,
                                    wish.theme, wish.colouring),
                       *into);
        return into;
    } catch (const OutOfRange&) {
        return nullptr;
    }
}

}  // namespace

Easel::Easel() : canvas_(std::make_shared<Canvas>()) {}
Easel::~Easel() = default;

void Easel::paint(const Wish& wish) {
    wished_ = wish;
    const auto pixels = [&] {
        if (spare_.empty()) return std::make_shared<picture::Pixels>();
        std::shared_ptr<picture::Pixels> one = spare_.back();
        spare_.pop_back();
        return one;
    };
    const auto picture = pixels();
    const bool charts = wish.mark && wish.chart_width > 0;
    const auto section = charts ? pixels() : nullptr;
    background_.start_next([canvas = canvas_, wish, picture, section](const Wanted&) {
        const Canvas::Drawn drawn = canvas->draw(wish);
        Painted painted{picture, nullptr, {}, wish, drawn.moment, drawn.view};
        picture::paint(drawn.list, *picture);
        if (wish.mark) painted.section = section_of(*wish.reel, drawn.moment, *wish.mark);
        if (section) painted.charts = paint_charts(*painted.section, wish, section);
        return painted;
    });
}

void Easel::give_back(Painted& painted) {
    for (auto* pixels : {&painted.picture, &painted.charts}) {
        if (*pixels) spare_.push_back(*pixels);
        pixels->reset();
    }
}

}  // namespace overbend::window
