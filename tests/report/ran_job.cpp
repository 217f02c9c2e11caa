#include "tests/report/ran_job.h"

#include "scenes/documents/report/job_page.h"
#include "scenes/files/case/read_case.h"
#include "tests/files/own_folder.h"

namespace overbend::tests {

RanJob ran_file(const std::string& path) {
    RanJob ran;
    ran.c = files::read_case(path, files::Needs::steps);
    ran.pattern = job::pattern_of(ran.c, job::run_process(ran.c, {}));
    ran.shop = job::shop_report(ran.c, ran.pattern.job);
    ran.page = documents::job_page(ran.c, ran.pattern, ran.shop,
                                   documents::all_drawings(ran.c, ran.pattern, drawing::Tolerances::none),
                                   "overbend of the checks");
    ran.html = report::page_html(ran.page);
    return ran;
}

RanJob ran_job(const std::string& text) {
    const OwnFolder folder;
    return ran_file(folder.write("case.toml", text).string());
}

}  // namespace overbend::tests
