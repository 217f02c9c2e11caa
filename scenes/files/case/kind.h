// What a kind of tool tells of itself. A family of kinds is a file: its functions below, one of each for every
// kind; kinds.h lists them. What it does to a strip is in scenes/job/run.
//
//   Kind kind_of(const T&);
//   void describe(Fields& f, T& t);                                keys, see fields.h
//   std::string figures(const T& t);                               its main sizes, in words
//   void measure(const drawing::Measurer& m, const T& t);          what is measured on its drawing
//
// and in sim/tool or, for blocks, in tool_outline.cpp, the outline.

#pragma once

#include "scenes/files/case/fields.h"

namespace overbend::drawing {
struct Measurer;
}

namespace overbend::files {

enum class Stands { punch, die, punch_or_die, pad, clamp };

// What a punch and a die do together; any: whatever the other one does.
enum class Work { vee, offset, channel, hem, wiping, radius, any };

struct Kind {
    const char* word = "";  // as a file calls it: "channel-die"
    Stands stands = Stands::punch;
    Work work = Work::any;
};

}  // namespace overbend::files
