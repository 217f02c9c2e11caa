// A stroke pressed by hand: down and up again, released from anywhere.
//
//   LiveStroke stroke(scene, options);      // the scene's stop is not looked at
//   stroke.press_to(3.2);                   // goes on from the whole increments it has made already
//   StrokeResult result = stroke.release();  // the same as press() to this travel; the strip stays pressed
//
// Whole increments are kept with their conditions. A travel is reached from the last of them before it by one
// increment cut short, as press() does: so a result does not depend on the way the punch was moved before,
// and is that of press() within the solver's tolerance. Strip that was pressed too far is not bent back: it
// is as if the punch had never gone there.
//
// Units  mm, N per mm of strip width.

#pragma once

#include <memory>

#include "sim/stroke/stroke.h"

namespace overbend::stroke {

class LiveStroke {
  public:
    LiveStroke(const StrokeScene& scene, const StrokeOptions& options);
    ~LiveStroke();
    LiveStroke(const LiveStroke&) = delete;
    LiveStroke& operator=(const LiveStroke&) = delete;

    // As near to the travel (>= 0) as the strip and the scene's limit of travel allow. Returns where it is.
    double press_to(double travel);

    // In words, why the punch cannot go on from here; empty: it can, as far as it has been tried.
    const std::string& held_by() const;

    // With finer increments where the balance of work stays open, as press() does.
    StrokeResult release();

  private:
    struct Inside;
    std::unique_ptr<Inside> in_;
};

}  // namespace overbend::stroke
