// That figures are estimates, and what presses and strips do to people: worded once, for pictures, pages,
// sheets and what the program prints. The README's part on safety says the same.

#pragma once

#include <string>
#include <vector>

namespace overbend::picture {

// One sentence, at the foot of whatever shows figures.
const std::string& estimate_words();

// The one above and the dangers in one sentence more: where a paragraph has no room.
const std::string& brief_caution();

// A paragraph a danger, as long as there is room for all of it.
const std::vector<std::string>& cautions();

// The same dangers for the foot of a sheet that lies at the press.
const std::vector<std::string>& sheet_cautions();

}  // namespace overbend::picture
