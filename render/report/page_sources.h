// The page's frame, style and script as they stand in this folder, built in by CMakeLists.txt.

#pragma once

namespace overbend::report {

extern const char* const page_frame;
extern const char* const page_style;
extern const char* const page_script;

}  // namespace overbend::report
