// The parts of a job's page, each of which fills what it is named after; shared among this folder's own
// files.

#pragma once

#include <string>
#include <vector>

#include "render/report/page.h"
#include "scenes/documents/drawings/drawings.h"
#include "scenes/documents/tables/job_tables.h"
#include "scenes/job/run/flat_pattern.h"
#include "scenes/job/shop/shop.h"

namespace overbend::documents {

// A number with so many decimals and a true minus sign; "-0.0" is "0.0".
std::string figure(double value, int decimals);
std::string in_degrees(double radians, int decimals = 1);

// A table of figures for the page.
report::Table page_table(const Table& table);

void add_part(const files::Case& c, const job::JobResult& job, report::Page& page);
void add_blank(const files::Case& c, const job::FlatPattern& pattern, report::Page& page);
void add_order(const files::Case& c, const job::JobResult& job, report::Page& page);
void add_strokes(const files::Case& c, const job::JobResult& job, report::Page& page);
void add_results(const files::Case& c, const job::JobResult& job, report::Page& page);
void add_shop(const files::Case& c, const job::ShopReport& shop, report::Page& page);
void add_drawings(const std::vector<Drawing>& drawings, report::Page& page);
void add_rules(const files::Case& c, const job::JobResult& job, report::Page& page);
void add_method(const files::Case& c, const job::JobResult& job, report::Page& page);
void add_material(const files::Case& c, report::Page& page);

// The same for every job.
std::vector<report::Term> glossary();

}  // namespace overbend::documents
