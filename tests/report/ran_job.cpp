#include "tests/report/ran_job.h"

#include "scenes/case/read_case.h"
#include "scenes/report/job_page.h"
#include "tests/files/own_folder.h"

namespace overbend::tests {

RanJob ran_file(const std::string& path) {
    RanJob ran;
    ran.c = scenes::read_case(path, scenes::Needs::steps);
    ran.pattern = scenes::pattern_of(ran.c, scenes::run_process(ran.c, {}));
    ran.shop = scenes::shop_report(ran.c, ran.pattern.job);
    ran.page = scenes::job_page(ran.c, ran.pattern, ran.shop,
                                scenes::all_drawings(ran.c, ran.pattern, scenes::Tolerances::none),
                                "overbend of the checks");
    ran.html = render::page_html(ran.page);
    return ran;
}

RanJob ran_job(const std::string& text) {
    const OwnFolder folder;
    return ran_file(folder.write("case.toml", text).string());
}

}  // namespace overbend::tests
