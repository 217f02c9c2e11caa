# Writes the page's files into a source: cmake -DFOLDER=... -DOUT=... -P embed.cmake
function(read_files result)
  set(text "")
  foreach(name ${ARGN})
    file(READ "${FOLDER}/${name}" part)
    string(APPEND text "${part}")
  endforeach()
  set(${result} "${text}" PARENT_SCOPE)
endfunction()

read_files(frame page.html)
read_files(style page.css)
read_files(script codec.js drawing.js player.js page.js)
file(WRITE "${OUT}" "// Made of the files of render/report by embed.cmake.
#include \"render/report/page_sources.h\"
namespace overbend::report {
const char* const page_frame = R\"~~~~(${frame})~~~~\";
const char* const page_style = R\"~~~~(${style})~~~~\";
const char* const page_script = R\"~~~~(${script})~~~~\";
}  // namespace overbend::report
")
