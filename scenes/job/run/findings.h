// The list of what was found out about a job, in one order: its strokes one after the other, the finished
// part, the shop rules, press and tools. Words are made of a finding here and nowhere else.

#pragma once

#include <algorithm>
#include <iterator>
#include <string>
#include <vector>

#include "scenes/files/case/case.h"
#include "sim/finding.h"

namespace overbend::job {

using Findings = std::vector<Finding>;

FindingPlace on_step(int step, int state = -1);
FindingPlace on_bend(int bend);
FindingPlace on_tool(int tool);

enum class RuleGroup { stroke, part, trade, press, tool };

struct RuleFacts {
    Rule rule;
    RuleGroup group;
    const char* name;  // "least inside radius"
    const char* unit;  // of figure and limit: "mm", "deg", "%"; empty: none
    const char* source;
};
const RuleFacts& facts_of(Rule rule);
std::string source_of(const Finding& finding);

// What is in the list already is not said again.
void add(Findings& list, const Finding& finding);

void not_checked(Rule rule, const std::string& why, Findings& list);

template <class Test>
Findings those(const Findings& list, Test test) {
    Findings found;
    std::copy_if(list.begin(), list.end(), std::back_inserter(found), test);
    return found;
}
Findings with(const Findings& list, Severity severity);
Findings of_group(const Findings& list, RuleGroup group);
Findings of_step(const Findings& list, int step);  // of the stroke itself, not of its bends and tools
Findings by_severity(Findings list);               // the gravest first
bool stops(const Findings& list);                  // is there one that does?

// ---- words

const char* heading_of(Severity severity);  // of a list: "Problems"
// "thin": of a check against a limit.
const char* verdict_word(Severity severity);
// Whose finding it is: "bend 'lip'", "step 'hook'", "cut-out 2", "tool 'wedge'"; empty: the job's.
std::string place_words(const files::Case& c, const FindingPlace& place);
// The whole of it but for its place.
std::string finding_words(const files::Case& c, const Finding& finding);
// With its place: "step 'hook': ..."; of what was not checked with the rule's name.
std::string sentence(const files::Case& c, const Finding& finding);
// In turn, cautions and notes that say the same of several bends, steps or tools together. Problems are
// counted, so each stands alone.
std::vector<Findings> alike(const files::Case& c, const Findings& list);
// Of findings that are alike: "steps 'hook' and 'lip': ..."
std::string sentence(const files::Case& c, const Findings& alike);
// One for all that are alike.
std::vector<std::string> sentences(const files::Case& c, const Findings& list);
// The first that stops the job; empty: none does.
std::string why_not(const files::Case& c, const Findings& list);

}  // namespace overbend::job
