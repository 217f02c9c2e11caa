// A film's frames painted on all cores and handed out one after the other, as an encoder wants them.
//
// Few frames are in memory at once (two more than there are painters), however long the film is. Instants
// that look the same are painted once. The bytes are the same for any number of threads.

#pragma once

#include <cstdint>
#include <functional>
#include <vector>

#include "render/film/timeline.h"
#include "render/picture/painter.h"

namespace overbend::film {

// One picture, and for how many frames of the film, one after the other, it stands.
struct Shot {
    int instant = 0;  // index into FrameList::instants, of the first of them
    int frames = 1;
};

bool look_the_same(const Instant& a, const Instant& b);
std::vector<Shot> shots_of(const FrameList& list);
int frames_in(const std::vector<Shot>& shots);

// 1 to 256; 0: one a core. Throws OutOfRange.
int painters_for(int threads, std::size_t shots);

enum class FrameBytes {
    bgrx,     // four bytes a pixel, as Pixels has them
    yuv420p,  // see yuv.h; the size must be even
    png       // the bytes of a file
};

// Takes a picture's bytes; called in the caller's thread, in the film's order.
using TakeFrame = std::function<void(const std::vector<std::uint8_t>& bytes, const Shot& shot)>;

// Paints every shot and hands it out. What `take` or a painter throws ends the painting, and is thrown here.
// Throws OutOfRange: threads; an odd size for yuv420p.
void paint_in_order(const ShownJob& job, const FilmOptions& options, const FrameList& list,
                    const std::vector<Shot>& shots, FrameBytes form, int threads, const TakeFrame& take);

}  // namespace overbend::film
