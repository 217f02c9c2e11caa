// The parts of a job's page, each of which fills what it is named after; shared among this folder's own
// files.

#pragma once

#include <string>
#include <vector>

#include "render/report/page.h"
#include "scenes/drawings/drawings.h"
#include "scenes/process/flat_pattern.h"
#include "scenes/shop/shop.h"

namespace overbend::scenes {

// A number with so many decimals and a true minus sign; "-0.0" is "0.0".
std::string figure(double value, int decimals);
std::string in_degrees(double radians, int decimals = 1);

// Names in a row: "lip", "lip and root", "lip, root and hem".
std::string named(const std::vector<std::string>& names);

void add_part(const Case& c, const JobResult& job, render::Page& page);
void add_blank(const Case& c, const FlatPattern& pattern, render::Page& page);
void add_order(const Case& c, const JobResult& job, render::Page& page);
void add_strokes(const Case& c, const JobResult& job, render::Page& page);
void add_results(const Case& c, const JobResult& job, render::Page& page);
void add_shop(const Case& c, const ShopReport& shop, render::Page& page);
void add_drawings(const std::vector<Drawing>& drawings, render::Page& page);
void add_rules(const Case& c, const JobResult& job, render::Page& page);
void add_method(const Case& c, const JobResult& job, render::Page& page);
void add_material(const Case& c, render::Page& page);

// The same for every job.
std::vector<render::Term> glossary();

}  // namespace overbend::scenes
