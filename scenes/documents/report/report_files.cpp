#include "scenes/documents/report/report_files.h"

#include "render/chart/force_travel.h"
#include "render/chart/moment_curvature.h"
#include "render/chart/stress_through_thickness.h"
#include "render/picture/painter.h"
#include "render/report/sheet.h"
#include "render/report/storyboard.h"
#include "scenes/documents/report/cost_chart.h"
#include "scenes/documents/report/job_page.h"
#include "scenes/documents/report/shown_job.h"
#include "sim/words.h"

namespace overbend::documents {

namespace {

using Paths = std::vector<std::filesystem::path>;

constexpr int slide_height = 1080;
constexpr chart::ChartSize small_chart{960, 640};
constexpr chart::ChartSize fine_chart{1920, 1280};

template <class Draw>
void write_chart(const Draw& draw, const std::filesystem::path& folder, const std::string& name,
                 Paths& written) {
    const Paths files = write_picture(draw(small_chart), draw(fine_chart), folder, name);
    written.insert(written.end(), files.begin(), files.end());
}

void write_storyboard(const picture::ShownJob& job, const std::filesystem::path& folder, picture::Theme theme,
                      Paths& written) {
    const std::vector<picture::DrawingList> slides = report::draw_slides(job, slide_height, theme);
    for (std::size_t i = 0; i < slides.size(); ++i) {
        const std::string name = i == 0 ? "storyboard" : words("storyboard_%zu", i + 1);
        picture::write_svg(slides[i], folder / (name + ".svg"));
        picture::write_png(slides[i], folder / (name + ".png"));
        written.push_back(folder / (name + ".svg"));
        written.push_back(folder / (name + ".png"));
    }
    picture::write_pdf(report::draw_story_pages(job, theme), folder / "storyboard.pdf");
    written.push_back(folder / "storyboard.pdf");
}

void write_stroke_charts(const picture::ShownJob& job, const picture::ShownStroke& shown,
                         const std::filesystem::path& folder, picture::Theme theme, Paths& written) {
    const std::string stroke = words("stroke_%02d_", shown.number);
    const auto write = [&](const std::string& name, const auto& draw_chart, const auto& chart) {
        write_chart([&](const chart::ChartSize& size) { return draw_chart(chart, size, theme); }, folder,
                    stroke + name, written);
    };
    write("force", chart::draw_force_travel, chart::force_travel(job, shown));
    write("moment", chart::draw_moment_curvature, chart::moment_curvature(shown));
    for (std::size_t i = 0; i < shown.bends.size(); ++i)
        write(shown.bends.size() > 1 ? words("stress_%zu", i + 1) : "stress",
              chart::draw_stress_through_thickness, chart::stress_through_thickness(shown, shown.bends[i]));
}

// Something made of the flat pattern, to which the job's recordings are lent meanwhile.
template <class Make>
auto with_pattern(const files::Case& c, job::JobResult& job, const Make& make) {
    job::FlatPattern pattern = job::pattern_of(c, std::move(job));
    auto made = make(pattern);
    job = std::move(pattern.job);
    return made;
}

}  // namespace

std::vector<std::filesystem::path> write_picture(const picture::DrawingList& small,
                                                 const picture::DrawingList& fine,
                                                 const std::filesystem::path& folder,
                                                 const std::string& name) {
    const Paths files = {folder / (name + ".svg"), folder / (name + ".pdf"), folder / (name + ".png")};
    picture::write_svg(small, files[0]);
    picture::write_pdf(small, files[1]);
    picture::write_png(fine, files[2]);
    return files;
}

std::vector<Drawing> report_drawings(const files::Case& c, job::JobResult& job) {
    return with_pattern(c, job, [&](const job::FlatPattern& pattern) {
        return all_drawings(c, pattern, drawing::Tolerances::none);
    });
}

std::string report_page(const files::Case& c, job::JobResult& job, const job::ShopReport& shop,
                        const std::vector<Drawing>& drawings) {
    return with_pattern(c, job, [&](const job::FlatPattern& pattern) {
        return report::page_html(
            job_page(c, pattern, shop, drawings, std::string("overbend ") + OVERBEND_VERSION));
    });
}

std::vector<std::filesystem::path> write_figures(const files::Case& c, const job::JobResult& job,
                                                 const job::ShopReport& shop,
                                                 const std::filesystem::path& folder, picture::Theme theme) {
    Paths written;
    const picture::ShownJob shown = shown_job(c, job);
    write_storyboard(shown, folder, theme, written);
    for (const picture::ShownStroke& stroke : shown.strokes)
        write_stroke_charts(shown, stroke, folder, theme, written);
    if (shop.cost_asked || shop.against) {
        const chart::CostOverBatch cost = cost_over_batch_data(c, shop);
        write_chart(
            [&](const chart::ChartSize& size) { return chart::draw_cost_over_batch(cost, size, theme); },
            folder, "cost", written);
    }
    return written;
}

std::filesystem::path write_sheets(const files::Case& c, const job::JobResult& job,
                                   const std::filesystem::path& folder) {
    std::filesystem::path path = folder / "sheets.pdf";
    picture::write_pdf(report::draw_sheets(shown_job(c, job)), path);
    return path;
}

}  // namespace overbend::documents
