// Findings of the shop rules for a case.

#pragma once

#include <string>
#include <vector>

#include "sim/plan/rule_finding.h"

namespace overbend::job {

struct RuleReport {
    std::vector<plan::RuleFinding> findings;
    std::vector<std::string> not_checked;  // rules that could not be asked, and why
};

}  // namespace overbend::job
