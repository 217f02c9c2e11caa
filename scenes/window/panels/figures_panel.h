// The figures of a job that ran: its strokes, the blank, press, tools and cost.

#pragma once

#include "render/picture/palette.h"
#include "render/ui/texture.h"
#include "render/ui/ui.h"
#include "scenes/window/job/job_run.h"
#include "scenes/window/panels/figure_tables.h"

namespace overbend::window {

class FiguresPanel {
  public:
    void draw(ui::Ui& ui, const SharedJob& job, picture::Theme theme);

  private:
    enum class Page { strokes, blank, press, tools, cost };
    static FigurePage figures_of(Page page, const RanJob& job);
    void draw_pages(ui::Ui& ui);
    void draw_cost_chart(const SharedJob& job, picture::Theme theme);
    Page page_ = Page::strokes;

    // What the chart was painted of.
    ui::Texture chart_;
    SharedJob painted_;
    picture::Theme theme_ = picture::Theme::light;
    int width_ = 0;
};

}  // namespace overbend::window
