// How things stand, by colour and shape: a problem is an octagon with a cross, a caution a triangle, a good
// verdict a disc with a tick, what is under way or out of date a ring. The words beside it say the same.

#pragma once

#include <string>

struct ImDrawList;
struct ImVec2;

namespace overbend::window {

enum class Standing { good, caution, problem, open };

// A sign of this height, px, with its middle there.
void draw_standing(ImDrawList& list, const ImVec2& middle, float height, Standing standing);

// A band over the top of a picture that is not of what is set up now. Into ImGui's present window.
void draw_band(const ImVec2& corner, double width, const std::string& words);

}  // namespace overbend::window
