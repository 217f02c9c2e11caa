#include "scenes/documents/study/study_charts.h"

#include <algorithm>
#include <cctype>

#include "render/chart/grid_curves.h"
#include "render/chart/histogram.h"
#include "render/chart/shares.h"
#include "scenes/documents/report/report_files.h"
#include "scenes/documents/study/study_tables.h"
#include "sim/words.h"

namespace overbend::documents {

namespace {

namespace fs = std::filesystem;
using job::StudySize;

constexpr chart::ChartSize small_size{800, 533}, fine_size{1600, 1066};

// Letters that any file system takes: "angle of 'lip'" is angle_of_lip.
std::string file_name(const std::string& words) {
    std::string name;
    for (const char c : words) {
        const bool plain = std::isalnum(static_cast<unsigned char>(c)) != 0;
        if (plain) name += c;
        if (!plain && !name.empty() && name.back() != '_') name += '_';
    }
    while (!name.empty() && name.back() == '_') name.pop_back();
    return name.substr(0, 60);
}

template <class Draw>
void write(const Draw& draw, const fs::path& folder, const std::string& name,
           std::vector<fs::path>& written) {
    for (const fs::path& file : write_picture(draw(small_size), draw(fine_size), folder, name))
        written.push_back(file);
}

// Drawn of each angle, and of any size of which more than 1 per cent is not within.
bool deserves_charts(const StudyReport& r, std::size_t i) {
    const auto& within = r.result.sizes[i].within;
    return r.sizes[i].what == StudySize::What::angle || (within && *within < 0.99);
}

void write_histogram(const StudyReport& r, std::size_t i, const fs::path& folder, const std::string& name,
                     std::vector<fs::path>& written) {
    const StudySize& size = r.sizes[i];
    const job::SizeScatter& s = r.result.sizes[i];
    chart::Histogram histogram;
    histogram.title = size.name;
    histogram.words = size.name + ", " + size.unit;
    for (const job::StudyRow* row : job::sample_rows(*r.plan, r.rows))
        if (row->solved) histogram.values.push_back(row->sizes[i]);
    if (histogram.values.size() < 2) return;
    if (size.judged()) histogram.drawn = size.drawn, histogram.allowed = size.allowed;
    std::string remark =
        words("Mean %.3f %s, standard deviation %.3f", s.mean, size.unit.c_str(), s.deviation);
    if (s.within) remark += "; " + per_cent_words(*s.within) + " within tolerance";
    if (s.cpk) remark += words("; Cpk %.2f", *s.cpk);
    histogram.remarks = {remark};
    write(
        [&](const chart::ChartSize& at) {
            return chart::draw_histogram(histogram, at, picture::Theme::light);
        },
        folder, "scatter_" + name, written);
}

void write_shares(const StudyReport& r, std::size_t i, const fs::path& folder, const std::string& name,
                  std::vector<fs::path>& written) {
    const std::vector<job::FactorImportance>& of = r.result.sizes[i].importance;
    if (of.empty() || of.size() > 24) return;
    chart::Shares shares;
    shares.title = "What the scatter comes from: " + r.sizes[i].name;
    for (std::size_t f = 0; f < of.size(); ++f)
        shares.bars.push_back({r.plan->factors[f].name, of[f].first.value, of[f].first.low, of[f].first.high,
                               of[f].total.value, of[f].total.low, of[f].total.high});
    shares.remarks = {"Black: 95 % interval."};
    write([&](const chart::ChartSize& at) { return chart::draw_shares(shares, at, picture::Theme::light); },
          folder, "importance_" + name, written);
}

// Over the grid with most values, a curve for each combination of the others, ten of them at most.
void write_grid_chart(const StudyReport& r, std::size_t i, const fs::path& folder, const std::string& name,
                      std::vector<fs::path>& written) {
    const std::vector<files::Grid>& grids = r.plan->study.grids;
    std::size_t across = 0;
    for (std::size_t g = 1; g < grids.size(); ++g)
        if (grids[g].values.size() > grids[across].values.size()) across = g;
    chart::GridCurves curves;
    curves.title = r.sizes[i].name;
    curves.across_words = grids[across].of.name;
    curves.up_words = r.sizes[i].name + ", " + r.sizes[i].unit;
    for (const job::StudyRow& row : r.rows) {
        if (!row.solved) continue;
        std::string others;
        for (std::size_t g = 0; g < grids.size(); ++g)
            if (g != across)
                others += (others.empty() ? "" : ", ") + grids[g].of.name + words(" %.6g", row.values[g]);
        auto curve = std::find_if(curves.curves.begin(), curves.curves.end(),
                                  [&](const chart::GridCurve& c) { return c.name == others; });
        if (curve == curves.curves.end()) curve = curves.curves.insert(curve, {others, {}});
        curve->points.emplace_back(row.values[across], row.sizes[i]);
    }
    if (curves.curves.empty() || grids[across].values.size() < 2) return;
    for (chart::GridCurve& curve : curves.curves)
        std::sort(curve.points.begin(), curve.points.end(),
                  [](const picture::Point& a, const picture::Point& b) { return a.x() < b.x(); });
    if (curves.curves.size() > 10) curves.curves.resize(10);
    write(
        [&](const chart::ChartSize& at) {
            return chart::draw_grid_curves(curves, at, picture::Theme::light);
        },
        folder, "grid_" + name, written);
}

}  // namespace

std::vector<fs::path> write_study_charts(const StudyReport& r, const fs::path& folder) {
    std::vector<fs::path> written;
    for (std::size_t i = 0; i < r.sizes.size(); ++i) {
        // Bends may be called alike but for letters that file names lack.
        const std::string name = words("%02zu_", i + 1) + file_name(r.sizes[i].name);
        if (r.plan->is_grid()) {
            const auto what = r.sizes[i].what;
            if (what != StudySize::What::leg && what != StudySize::What::profile)
                write_grid_chart(r, i, folder, name, written);
        } else if (deserves_charts(r, i)) {
            write_histogram(r, i, folder, name, written);
            write_shares(r, i, folder, name, written);
        }
    }
    return written;
}

}  // namespace overbend::documents
