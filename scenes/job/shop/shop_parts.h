// The parts that a report of the shop is made of. For scenes/job/shop only.

#pragma once

#include "scenes/job/shop/shop.h"

namespace overbend::job {

// Of one solved step.
StrokeOnPress stroke_on_press(const files::Case& c, const JobResult& job, int step);
shop::PressLimits press_limits(const files::Press& press);

// The case's tools that solved steps use, loaded by their strokes.
std::vector<ToolInShop> tools_in_shop(const files::Case& c, const JobResult& job,
                                      const shop::MakingRates& rates, Findings& findings);
// Face of the die in a step; 1 of every other tool.
int face_up(const files::Case& c, const files::Step& step, int tool);

// What holds a punch or a die whose load is beside the face that it is held by.
void judge_holding(const files::Case& c, const JobResult& job, ToolInShop& tool);
// Side thrust of the strokes, as notes: one a stroke that has any worth telling.
void tell_of_side_thrust(const files::Case& c, const JobResult& job, Findings& findings);

// Springs of a pad or clamp that is pressed in by so much in the job. mends: sufficient springs where the
// case's own do not.
std::optional<SpringAdvice> spring_advice(const files::Case& c, int tool, double compression,
                                          Findings& checks, Findings& mends);

std::vector<SharedBlock> shared_blocks(const files::Case& c, const std::vector<ToolInShop>& tools,
                                       const shop::MakingRates& rates);

shop::JobFigures job_figures(const files::Case& c, const JobResult& job,
                             const std::vector<StrokeOnPress>& strokes, const std::vector<ToolInShop>& tools,
                             const shop::CostRates& rates);

}  // namespace overbend::job
