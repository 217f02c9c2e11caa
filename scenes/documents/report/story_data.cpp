#include "scenes/report/story_data.h"

#include "sim/words.h"

namespace overbend::scenes {

namespace {

render::Turned turned_between(const Step& before, const Step& step) {
    const bool over = before.face != step.face, end = before.first != step.first;
    if (over && end) return render::Turned::tipped;
    return over ? render::Turned::over : end ? render::Turned::end_for_end : render::Turned::no;
}

render::StoryStroke story_stroke(const Case& c, const JobResult& job, int index) {
    const Step& step = c.steps[index];
    const StepResult& result = job.steps[index];
    render::StoryStroke stroke;
    stroke.name = step.name;
    stroke.tools = c.tools[step.punch].name + ", " + c.tools[step.die].name;
    stroke.recording = &result.stroke.recording;
    if (index > 0) stroke.turned = turned_between(c.steps[index - 1], step);
    for (const BendResult& b : result.bends)
        stroke.angles.push_back({c.part.bends[b.bend].name, b.loaded, b.free});
    for (const Interference& f : result.interferences)
        stroke.hits.push_back({f.deepest.at, -f.deepest.distance, f.first_state, f.last_state});
    return stroke;
}

render::CostCurve cost_curve(const std::string& name, const shop::CostSheet& cost) {
    constexpr int most_parts = 1000000, points = 40;
    render::CostCurve curve;
    curve.name = name;
    for (const int batch : shop::batches_up_to(most_parts, points))
        curve.points.push_back({1.0 * batch, cost.per_part(batch)});
    return curve;
}

}  // namespace

render::Storyboard storyboard_data(const Case& c, const JobResult& job) {
    render::Storyboard board;
    board.title = c.title;
    board.remark = words("%s, %g mm", c.material.title.c_str(), c.thickness);
    for (std::size_t i = 0; i < job.steps.size(); ++i)
        if (job.steps[i].stroke.solved()) board.strokes.push_back(story_stroke(c, job, static_cast<int>(i)));
    return board;
}

std::vector<render::ForceLimit> force_limits(const Case& c, const Step& step) {
    std::vector<render::ForceLimit> limits;
    if (c.press && c.press->force > 0.0) limits.push_back({"Rated force of the press", c.press->force});
    if (c.press && c.press->line_load)
        limits.push_back({"What the press's holders bear", *c.press->line_load * c.width / 1000.0});
    std::vector<int> tools = {step.punch, step.die};
    if (step.pad) tools.push_back(*step.pad);
    if (step.clamp) tools.push_back(*step.clamp);
    for (const int tool : tools)
        if (c.tools[tool].make.rating)
            limits.push_back(
                {"Rating of '" + c.tools[tool].name + "'", *c.tools[tool].make.rating * c.width / 1000.0});
    return limits;
}

render::ForceTravel force_travel_data(const Case& c, const JobResult& job, int step) {
    render::ForceTravel chart = render::force_travel(job.steps[step].stroke.recording, c.width);
    chart.title = words("Stroke %d, %s: force over travel", step + 1, c.steps[step].name.c_str());
    chart.limits = force_limits(c, c.steps[step]);
    return chart;
}

render::MomentCurvature moment_curvature_data(const Case& c, const JobResult& job, int step) {
    render::MomentCurvature chart;
    chart.title = words("Stroke %d, %s: moment over curvature", step + 1, c.steps[step].name.c_str());
    for (const int b : c.steps[step].bends)
        chart.bends.push_back(render::moment_curve(job.steps[step].stroke.recording, c.part.bends[b].name,
                                                   job.blank.flat_middle(b), job.blank.flat_middle(b + 1)));
    return chart;
}

render::StressThroughThickness stress_data(const Case& c, const JobResult& job, int step, int bend) {
    render::StressThroughThickness chart = render::stress_through_thickness(
        job.steps[step].stroke.recording, job.blank.flat_middle(bend), job.blank.flat_middle(bend + 1));
    chart.title =
        words("Stroke %d, bend %s: stress through the thickness", step + 1, c.part.bends[bend].name.c_str());
    return chart;
}

render::CostOverBatch cost_over_batch_data(const Case& c, const ShopReport& shop) {
    render::CostOverBatch chart;
    chart.title = "What a part costs over the size of the batch";
    chart.money = shop.cost.money;
    chart.curves = {cost_curve(c.title, shop.cost)};
    if (!shop.against) return chart;
    const std::string& name = shop.against->name;
    chart.curves.push_back(cost_curve(name == c.title ? name + ", the other way" : name, shop.against->cost));
    return chart;
}

}  // namespace overbend::scenes
