// What a report consists of, as files: its page, the storyboard, the charts of every stroke, the sheets for
// the shop.

#pragma once

#include <filesystem>
#include <string>
#include <vector>

#include "render/picture/drawing_list.h"
#include "render/picture/palette.h"
#include "scenes/documents/drawings/drawings.h"
#include "scenes/job/run/process.h"
#include "scenes/job/shop/shop.h"

namespace overbend::documents {

// A picture as files for people: NAME.svg and NAME.pdf as drawn small, NAME.png as drawn twice as fine.
// Returns them. Throws as the painter.
std::vector<std::filesystem::path> write_picture(const picture::DrawingList& small,
                                                 const picture::DrawingList& fine,
                                                 const std::filesystem::path& folder,
                                                 const std::string& name);

// The workshop drawings that go with it. The job's recordings are lent to them while they are made.
std::vector<Drawing> report_drawings(const files::Case& c, job::JobResult& job);

// The page that explains the job, as one HTML document. The job's recordings are lent to it while it is made.
// Throws OutOfRange: a job that was not solved.
std::string report_page(const files::Case& c, job::JobResult& job, const job::ShopReport& shop,
                        const std::vector<Drawing>& drawings);

// Into the folder, which must be there:
//   storyboard.svg, .png (a slide; storyboard_2 and so on for jobs that one does not hold), storyboard.pdf
//   (A4) stroke_01_force.svg, .pdf, .png; stroke_01_moment and stroke_01_stress the same, stress by bend
//   where a stroke has two: stroke_04_stress_1, stroke_04_stress_2
//   cost.svg, .pdf, .png of a case that has a table of costs
// A stroke that was not solved has none. Returns what was written. Throws as the painter; OutOfRange when no
// stroke was solved.
std::vector<std::filesystem::path> write_figures(const files::Case& c, const job::JobResult& job,
                                                 const job::ShopReport& shop,
                                                 const std::filesystem::path& folder, picture::Theme theme);

// sheets.pdf, A4. Throws as write_figures.
std::filesystem::path write_sheets(const files::Case& c, const job::JobResult& job,
                                   const std::filesystem::path& folder);

}  // namespace overbend::documents
