#include "scenes/report/report_files.h"

#include "render/picture/painter.h"
#include "scenes/report/job_page.h"
#include "scenes/report/sheet_data.h"
#include "scenes/report/story_data.h"
#include "sim/words.h"

namespace overbend::scenes {

namespace {

using Paths = std::vector<std::filesystem::path>;

constexpr int slide_height = 1080;
constexpr render::ChartSize small_chart{960, 640};
constexpr render::ChartSize fine_chart{1920, 1280};

// A chart as SVG and PDF, and as PNG twice as fine.
template <class Draw>
void write_chart(const Draw& draw, const std::filesystem::path& folder, const std::string& name,
                 Paths& written) {
    const render::DrawingList list = draw(small_chart);
    render::write_svg(list, folder / (name + ".svg"));
    render::write_pdf(list, folder / (name + ".pdf"));
    render::write_png(draw(fine_chart), folder / (name + ".png"));
    for (const char* kind : {".svg", ".pdf", ".png"}) written.push_back(folder / (name + kind));
}

void write_storyboard(const Case& c, const JobResult& job, const std::filesystem::path& folder,
                      render::Theme theme, Paths& written) {
    const render::Storyboard board = storyboard_data(c, job);
    const std::vector<render::DrawingList> slides = render::draw_slides(board, slide_height, theme);
    for (std::size_t i = 0; i < slides.size(); ++i) {
        const std::string name = i == 0 ? "storyboard" : words("storyboard_%zu", i + 1);
        render::write_svg(slides[i], folder / (name + ".svg"));
        render::write_png(slides[i], folder / (name + ".png"));
        written.push_back(folder / (name + ".svg"));
        written.push_back(folder / (name + ".png"));
    }
    render::write_pdf(render::draw_story_pages(board, theme), folder / "storyboard.pdf");
    written.push_back(folder / "storyboard.pdf");
}

void write_stroke_charts(const Case& c, const JobResult& job, int step, const std::filesystem::path& folder,
                         render::Theme theme, Paths& written) {
    const std::string stroke = words("stroke_%02d_", step + 1);
    const render::ForceTravel force = force_travel_data(c, job, step);
    write_chart([&](const render::ChartSize& size) { return draw_force_travel(force, size, theme); }, folder,
                stroke + "force", written);
    const render::MomentCurvature moment = moment_curvature_data(c, job, step);
    write_chart([&](const render::ChartSize& size) { return draw_moment_curvature(moment, size, theme); },
                folder, stroke + "moment", written);
    const std::vector<int>& bends = c.steps[step].bends;
    for (std::size_t i = 0; i < bends.size(); ++i) {
        const render::StressThroughThickness stress = stress_data(c, job, step, bends[i]);
        write_chart(
            [&](const render::ChartSize& size) { return draw_stress_through_thickness(stress, size, theme); },
            folder, stroke + (bends.size() > 1 ? words("stress_%zu", i + 1) : "stress"), written);
    }
}

}  // namespace

namespace {

// Something made of the flat pattern, to which the job's recordings are lent meanwhile.
template <class Make>
auto with_pattern(const Case& c, JobResult& job, const Make& make) {
    FlatPattern pattern = pattern_of(c, std::move(job));
    auto made = make(pattern);
    job = std::move(pattern.job);
    return made;
}

}  // namespace

std::vector<Drawing> report_drawings(const Case& c, JobResult& job) {
    return with_pattern(
        c, job, [&](const FlatPattern& pattern) { return all_drawings(c, pattern, Tolerances::none); });
}

std::string report_page(const Case& c, JobResult& job, const ShopReport& shop,
                        const std::vector<Drawing>& drawings) {
    return with_pattern(c, job, [&](const FlatPattern& pattern) {
        return render::page_html(
            job_page(c, pattern, shop, drawings, std::string("overbend ") + OVERBEND_VERSION));
    });
}

std::vector<std::filesystem::path> write_figures(const Case& c, const JobResult& job, const ShopReport& shop,
                                                 const std::filesystem::path& folder, render::Theme theme) {
    Paths written;
    write_storyboard(c, job, folder, theme, written);
    for (std::size_t i = 0; i < job.steps.size(); ++i)
        if (job.steps[i].stroke.solved())
            write_stroke_charts(c, job, static_cast<int>(i), folder, theme, written);
    if (shop.cost_asked || shop.against) {
        const render::CostOverBatch cost = cost_over_batch_data(c, shop);
        write_chart([&](const render::ChartSize& size) { return draw_cost_over_batch(cost, size, theme); },
                    folder, "cost", written);
    }
    return written;
}

std::filesystem::path write_sheets(const Case& c, const JobResult& job, const std::filesystem::path& folder) {
    std::filesystem::path path = folder / "sheets.pdf";
    render::write_pdf(render::draw_sheets(sheet_data(c, job)), path);
    return path;
}

}  // namespace overbend::scenes
