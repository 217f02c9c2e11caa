// A case that was run, with its flat pattern and its page, for checks of what is told of it.

#pragma once

#include <string>

#include "render/report/page.h"
#include "scenes/job/run/flat_pattern.h"
#include "scenes/job/shop/shop.h"

namespace overbend::tests {

struct RanJob {
    files::Case c;
    job::FlatPattern pattern;
    job::ShopReport shop;
    report::Page page;
    std::string html;
    const job::JobResult& job() const { return pattern.job; }
};

// From the text of a case file.
RanJob ran_job(const std::string& text);
// From a case file.
RanJob ran_file(const std::string& path);

}  // namespace overbend::tests
