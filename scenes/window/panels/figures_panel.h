// The figures of a job that ran: its strokes, the blank, press, tools and cost.

#pragma once

#include "render/picture/palette.h"
#include "render/window/texture.h"
#include "render/window/ui.h"
#include "scenes/window/job/job_run.h"

namespace overbend::scenes {

class FiguresPanel {
  public:
    void draw(render::Ui& ui, const SharedJob& job, render::Theme theme);

  private:
    enum class Page { strokes, blank, press, tools, cost };
    void draw_pages(render::Ui& ui);
    void draw_cost_chart(const SharedJob& job, render::Theme theme);
    Page page_ = Page::strokes;

    // What the chart was painted of.
    render::Texture chart_;
    SharedJob painted_;
    render::Theme theme_ = render::Theme::light;
    int width_ = 0;
};

}  // namespace overbend::scenes
