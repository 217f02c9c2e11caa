// A stroke as the data that a page carries for its player (page.js reads it).
//
// Numbers in lists are packed (packing.h). Places are multiples of place_quantum, y up; angles hundredths of
// a degree; directions thousandths of a radian; travel ten-thousandths of a mm; forces tenths of a N per mm
// of width and whole N of the whole strip; times ms. Each list that runs over the states is made of
// differences to the state before.

#pragma once

#include <nlohmann/json_fwd.hpp>
#include <string>

#include "render/report/player.h"
#include "render/report/strip_track.h"

namespace overbend::report {

// told: in each passage. how: of the job (track_options).
nlohmann::ordered_json stroke_json(const picture::ShownJob& job, const picture::ShownStroke& stroke,
                                   const PassageWords& told, const TrackOptions& how);

// A tool's closed outline as the path of an SVG, y down, in its own coordinates.
std::string outline_path(const tool::ArcOutline& outline);

// As text that may stand in a script element: nothing in it ends the element or opens a comment.
std::string in_script(const nlohmann::ordered_json& json);

}  // namespace overbend::report
