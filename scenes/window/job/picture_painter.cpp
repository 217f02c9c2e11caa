#include "scenes/window/job/picture_painter.h"

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

picture::ViewOptions view_options(const Playback& playback, int stroke) {
    picture::ViewOptions options;
    options.charts = playback.options.charts;
    options.lens = playback.options.lens;
    for (const picture::BendMark& bend : playback.shown.strokes[stroke].bends)
        options.bend_lines.push_back(bend.blank_position);
    return options;
}

bool same_mark(const std::optional<SectionMark>& a, const std::optional<SectionMark>& b) {
    return a.has_value() == b.has_value() &&
           (!a || (a->blank_position == b->blank_position && a->layer == b->layer));
}

}  // namespace

bool same(const PictureRequest& a, const PictureRequest& b) {
    return a.playback == b.playback && a.at == b.at && a.theme == b.theme && a.colouring == b.colouring &&
           a.springback_scale == b.springback_scale && same_zoom(a.zoom, b.zoom) && a.names == b.names &&
           a.lens_at == b.lens_at && same_mark(a.mark, b.mark) && a.chart_width == b.chart_width &&
           a.chart_height == b.chart_height && a.chart_letter == b.chart_letter;
}

int layer_in(const Playback& playback, int stroke, const SectionMark& mark) {
    const picture::ShownStroke& shown = playback.shown.strokes[stroke];
    return shown.upper_face_up != mark.face_down ? mark.layer : shown.recording->layers() - 1 - mark.layer;
}

// Used by one thread after the other, never by two at a time.
struct PicturePainter::Canvas {
    SharedPlayback playback;
    film::FrameList frames;  // looks as they are zoomed; no instants
    // Where names and magnifier of each stroke were last placed.
    struct Placed {
        picture::Zoom zoom;
        picture::View view;
    };
    std::vector<Placed> placed;

    void begin(const SharedPlayback& next) {
        if (next == playback) return;
        playback = next;
        frames.frames_per_second = playback->frames.frames_per_second;
        frames.looks = playback->frames.looks;
        placed.clear();
        for (const film::StrokeLook& look : frames.looks) placed.push_back({{}, look.view});
    }

    void look_at(int stroke, const PictureRequest& request) {
        picture::View& view = frames.looks[stroke].view;
        Placed& last = placed[stroke];
        const picture::View& fitted = playback->frames.looks[stroke].view;
        const stroke::Recording& recording = *playback->shown.strokes[stroke].recording;
        const picture::PictureSize& size = playback->options.size;
        const picture::ViewOptions options = view_options(*playback, stroke);
        const std::vector<picture::BendMark>& bends = playback->frames.looks[stroke].bends;
        if (same_zoom(last.zoom, request.zoom)) {
            view = last.view;
        } else if (is_fit(request.zoom)) {
            view = fitted;
            last = {request.zoom, view};
        } else if (request.names == picture::Names::placed_anew) {
            view = picture::zoomed(recording, fitted, request.zoom, size, options, request.names);
            view.angles =
                picture::place_angles(recording, view, picture::lay_out(size, options.charts), bends);
            last = {request.zoom, view};
        } else {
            const picture::Zoom on{request.zoom.times / last.zoom.times,
                                   request.zoom.shift - last.zoom.shift};
            view = picture::zoomed(recording, last.view, on, size, options, request.names);
            view.angles.assign(bends.size(), std::nullopt);  // their words wait until it rests
        }
        if (view.lens && request.lens_at) view.lens->blank_position = *request.lens_at;
    }

    struct Drawn {
        picture::DrawingList list;
        film::Instant instant;
        picture::View view;
    };
    Drawn draw(const PictureRequest& request) {
        begin(request.playback);
        Drawn drawn;
        const film::Instant& m = drawn.instant = instant_of(*playback, request.at, request.springback_scale);
        for (const int stroke : {m.stroke, m.from, m.to})
            if (stroke >= 0) look_at(stroke, request);
        frames.colour_limit = request.colouring == picture::Colouring::hoop_stress ? playback->stress_limit
                                                                                   : playback->strain_limit;
        film::FilmOptions options = playback->options;
        options.theme = request.theme;
        options.colouring = request.colouring;
        drawn.view = frames.looks[m.stroke].view;
        drawn.list = film::draw_instant(playback->shown, options, frames, m);
        if (request.mark && film::in_a_stroke(m.passage))
            add_section_mark(drawn.list, *playback->shown.strokes[m.stroke].recording,
                             drawn_state(*playback, m), drawn.view, request.mark->blank_position,
                             layer_in(*playback, m.stroke, *request.mark), request.theme);
        return drawn;
    }
};

picture::DrawingList PicturePainter::drawing_of(const PictureRequest& request) {
    Canvas canvas;
    return canvas.draw(request).list;
}

namespace {

// With its path through all strokes that came before.
chart::SectionNow section_of(const Playback& playback, const film::Instant& m, const SectionMark& mark) {
    const auto face = [&](int stroke) { return playback.shown.strokes[stroke].upper_face_up; };
    chart::SectionNow now = chart::section_now(*playback.shown.strokes[m.stroke].recording, m.at,
                                               mark.blank_position, layer_in(playback, m.stroke, mark));
    for (int k = 0; k < m.stroke; ++k)
        chart::put_before(now, *playback.shown.strokes[k].recording,
                          face(k) == face(m.stroke) ? chart::Faces::as_now : chart::Faces::turned_over);
    return now;
}

// None where they have no room.
std::shared_ptr<picture::Pixels> paint_charts(const chart::SectionNow& section, const PictureRequest& request,
                                              const std::shared_ptr<picture::Pixels>& into) {
    try {
        picture::paint(draw_section(section, request.chart_width, request.chart_height, request.chart_letter,
                                    request.theme, request.colouring),
                       *into);
        return into;
    } catch (const OutOfRange&) {
        return nullptr;
    }
}

}  // namespace

PicturePainter::PicturePainter() : canvas_(std::make_shared<Canvas>()) {}
PicturePainter::~PicturePainter() = default;

void PicturePainter::paint(const PictureRequest& request) {
    requested_ = request;
    const auto pixels = [&] {
        if (spare_.empty()) return std::make_shared<picture::Pixels>();
        std::shared_ptr<picture::Pixels> one = spare_.back();
        spare_.pop_back();
        return one;
    };
    const auto picture = pixels();
    const bool charts = request.mark && request.chart_width > 0;
    const auto section = charts ? pixels() : nullptr;
    background_.start_next([canvas = canvas_, request, picture, section](const Wanted&) {
        const Canvas::Drawn drawn = canvas->draw(request);
        Painted painted{picture, nullptr, {}, request, drawn.instant, drawn.view};
        picture::paint(drawn.list, *picture);
        if (request.mark) painted.section = section_of(*request.playback, drawn.instant, *request.mark);
        if (section) painted.charts = paint_charts(*painted.section, request, section);
        return painted;
    });
}

void PicturePainter::give_back(Painted& painted) {
    for (auto* pixels : {&painted.picture, &painted.charts}) {
        if (*pixels) spare_.push_back(*pixels);
        pixels->reset();
    }
}

}  // namespace overbend::window
