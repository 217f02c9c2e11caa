#include "scenes/documents/report/story_data.h"

#include "sim/words.h"

namespace overbend::documents {

namespace {

report::Turned turned_between(const files::Step& before, const files::Step& step) {
    const bool over = before.face != step.face, end = before.first != step.first;
    if (over && end) return report::Turned::tipped;
    return over ? report::Turned::over : end ? report::Turned::end_for_end : report::Turned::no;
}

report::StoryStroke story_stroke(const files::Case& c, const job::JobResult& job, int index) {
    const files::Step& step = c.steps[index];
    const job::StepResult& result = job.steps[index];
    report::StoryStroke stroke;
    stroke.name = step.name;
    stroke.tools = c.tools[step.punch].name + ", " + c.tools[step.die].name;
    stroke.recording = &result.stroke.recording;
    if (index > 0) stroke.turned = turned_between(c.steps[index - 1], step);
    for (const job::BendResult& b : result.bends)
        stroke.angles.push_back({c.part.bends[b.bend].name, b.loaded, b.free});
    for (const job::Interference& f : result.interferences)
        stroke.hits.push_back({f.deepest.at, -f.deepest.distance, f.first_state, f.last_state});
    return stroke;
}

chart::CostCurve cost_curve(const std::string& name, const shop::CostSheet& cost) {
    constexpr int most_parts = 1000000, points = 40;
    chart::CostCurve curve;
    curve.name = name;
    for (const int batch : shop::batches_up_to(most_parts, points))
        curve.points.push_back({1.0 * batch, cost.per_part(batch)});
    return curve;
}

}  // namespace

report::Storyboard storyboard_data(const files::Case& c, const job::JobResult& job) {
    report::Storyboard board;
    board.title = c.title;
    board.remark = words("%s, %g mm", c.material.title.c_str(), c.thickness);
    for (std::size_t i = 0; i < job.steps.size(); ++i)
        if (job.steps[i].stroke.solved()) board.strokes.push_back(story_stroke(c, job, static_cast<int>(i)));
    return board;
}

std::vector<chart::ForceLimit> force_limits(const files::Case& c, const files::Step& step) {
    std::vector<chart::ForceLimit> limits;
    if (c.press && c.press->force > 0.0) limits.push_back({"Rated force of the press", c.press->force});
    if (c.press && c.press->line_load)
        limits.push_back({"Rated load of the tool holders", *c.press->line_load * c.width / 1000.0});
    std::vector<int> tools = {step.punch, step.die};
    if (step.pad) tools.push_back(*step.pad);
    if (step.clamp) tools.push_back(*step.clamp);
    for (const int tool : tools)
        if (c.tools[tool].make.rating)
            limits.push_back(
                {"Rating of '" + c.tools[tool].name + "'", *c.tools[tool].make.rating * c.width / 1000.0});
    return limits;
}

chart::ForceTravel force_travel_data(const files::Case& c, const job::JobResult& job, int step) {
    chart::ForceTravel chart = chart::force_travel(job.steps[step].stroke.recording, c.width);
    chart.title = words("Stroke %d, %s: force over travel", step + 1, c.steps[step].name.c_str());
    chart.limits = force_limits(c, c.steps[step]);
    return chart;
}

chart::MomentCurvature moment_curvature_data(const files::Case& c, const job::JobResult& job, int step) {
    chart::MomentCurvature chart;
    chart.title = words("Stroke %d, %s: moment over curvature", step + 1, c.steps[step].name.c_str());
    for (const int b : c.steps[step].bends)
        chart.bends.push_back(chart::moment_curve(job.steps[step].stroke.recording, c.part.bends[b].name,
                                                  job.blank.flat_middle(b), job.blank.flat_middle(b + 1)));
    return chart;
}

chart::StressThroughThickness stress_data(const files::Case& c, const job::JobResult& job, int step,
                                          int bend) {
    chart::StressThroughThickness chart = chart::stress_through_thickness(
        job.steps[step].stroke.recording, job.blank.flat_middle(bend), job.blank.flat_middle(bend + 1));
    chart.title =
        words("Stroke %d, bend %s: stress through the thickness", step + 1, c.part.bends[bend].name.c_str());
    return chart;
}

chart::CostOverBatch cost_over_batch_data(const files::Case& c, const job::ShopReport& shop) {
    chart::CostOverBatch chart;
    chart.title = "Cost of a part over the batch size";
    chart.money = shop.cost.money;
    chart.curves = {cost_curve(c.title, shop.cost)};
    if (!shop.against) return chart;
    const std::string& name = shop.against->name;
    chart.curves.push_back(
        cost_curve(name == c.title ? name + ", the alternative" : name, shop.against->cost));
    return chart;
}

}  // namespace overbend::documents
