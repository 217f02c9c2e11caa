// The parts that a report of the shop is made of. For scenes/shop only.

#pragma once

#include "scenes/shop/shop.h"

namespace overbend::scenes {

// Of one solved step.
StrokeOnPress stroke_on_press(const Case& c, const JobResult& job, int step);
shop::PressLimits press_limits(const Press& press);

// The case's tools that solved steps use, loaded by their strokes.
std::vector<ToolInShop> tools_in_shop(const Case& c, const JobResult& job, const shop::MakingRates& rates,
                                      std::vector<std::string>& not_checked);
// Face of the die in a step; 1 of every other tool.
int face_up(const Case& c, const Step& step, int tool);

// Springs of a pad or clamp that is pressed in by so much in the job. mends: springs that would do where the
// case's own do not.
std::optional<SpringAdvice> spring_advice(const Case& c, const Tool& tool, double compression,
                                          std::vector<shop::Check>& checks, std::vector<std::string>& mends);

std::vector<SharedBlock> shared_blocks(const Case& c, const std::vector<ToolInShop>& tools,
                                       const shop::MakingRates& rates);

shop::JobFigures job_figures(const Case& c, const JobResult& job, const std::vector<StrokeOnPress>& strokes,
                             const std::vector<ToolInShop>& tools);

}  // namespace overbend::scenes
