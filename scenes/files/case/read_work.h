// Checks of what the tools of a case file's steps make of its bends.

#pragma once

#include <vector>

#include "scenes/files/case/case.h"

namespace overbend::files {

class StrictTable;

// A step that has been read: tools that go together and suit the strip, bends that they can make, lying the
// right way up. before: the steps before it. Throws CaseError at the step's table.
void check_work(const StrictTable& table, const Step& step, const Case& job, const std::vector<Step>& before);

// Every bend drawn with 180 degrees is laid flat in its last step. Throws CaseError at the bend.
void check_hems_laid(const StrictTable& part, const Case& job);

}  // namespace overbend::files
