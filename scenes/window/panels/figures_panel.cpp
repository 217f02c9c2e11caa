#include "scenes/window/panels/figures_panel.h"

#include <imgui.h>

#include <algorithm>

#include "scenes/documents/report/cost_chart.h"
#include "scenes/window/panels/figure_tables.h"
#include "scenes/window/shared/flow.h"
#include "sim/errors.h"

namespace overbend::window {

using ui::Ui;

FigurePage FiguresPanel::figures_of(Page page, const RanJob& job) {
    if (page == Page::strokes) return stroke_figures(job);
    if (page == Page::blank) return blank_figures(job);
    if (page == Page::press) return press_figures(job);
    return page == Page::tools ? tool_figures(job) : cost_figures(job);
}

void FiguresPanel::draw(Ui& ui, const SharedJob& job, picture::Theme theme) {
    if (!job) return ui.words("Nothing has been run yet.", Ui::Weight::muted);
    draw_pages(ui);
    ImGui::Spacing();
    if (!job->wrong.empty()) ui.words(job->wrong, Ui::Weight::alarm);
    const FigurePage page = figures_of(page_, *job);
    for (const documents::Table& table : page.tables) draw_table(ui, table);
    for (const std::string& said : page.words) ui.words(said, Ui::Weight::muted);
    if (page_ == Page::cost) draw_cost_chart(job, theme);
}

void FiguresPanel::draw_pages(Ui& ui) {
    Flow flow(ui);
    const auto page = [&](const char* words, Page which) {
        if (!flow.toggle(words, ui::chosen_if(page_ == which))) return;
        page_ = which;
        ImGui::SetScrollY(0.0f);
    };
    page("Strokes", Page::strokes);
    page("Blank", Page::blank);
    page("Press", Page::press);
    page("Tools", Page::tools);
    page("Cost", Page::cost);
}

void FiguresPanel::draw_cost_chart(const SharedJob& job, picture::Theme theme) {
    if (job->shop.cost.lines.empty()) return;
    const double letter = ImGui::GetFontSize();
    const int width = static_cast<int>(ImGui::GetContentRegionAvail().x);
    if (painted_ != job || theme_ != theme || width_ != width) {
        painted_ = job, theme_ = theme, width_ = width;
        picture::DrawingList list{"", std::max(1, width), static_cast<int>(15.0 * letter),
                                  picture::theme_colours(theme).page};
        try {
            chart::CostOverBatch cost = documents::cost_over_batch_data(job->c, job->shop);
            cost.title.clear();
            const picture::Rect box{0.3 * letter, 0.5 * letter, list.width - 0.6 * letter,
                                    list.height - letter};
            chart::add_cost_over_batch(list, box, cost, {theme, 0.85 * letter});
        } catch (const OutOfRange&) {
            list.items.clear();  // no room for its words
        }
        chart_.show(list);
    }
    ImGui::Image(chart_.handle(), {static_cast<float>(chart_.width()), static_cast<float>(chart_.height())});
}

}  // namespace overbend::window
