// The bench at work, without a window: strips that are bent alike by one punch, which goes down and up again
// as often as it is moved.
//
//   BenchPress press(setup);
//   press.follow({{3.2}, {0.0}, {3.4}});  // pressed, released, and pressed again from the bent strip
//   press.strips()[0].loaded              // rad
//
// A strip stays bent: while the punch goes up it springs back in contact, and when nothing touches it any
// more it is free. The next press begins from the free strip, with all its history. A punch that turns down
// before the strip is free goes back the way it came: until then the strip is elastic, but for a little
// yielding back and friction, which are left out.
//
// Units  mm, rad, 1/mm.

#pragma once

#include <functional>
#include <memory>
#include <string>
#include <vector>

#include "render/picture/panel.h"
#include "scenes/window/bench/setup.h"

namespace overbend::window {

// A press of the same strip before the last one, complete.
struct EarlierPress {
    stroke::Recording recording;
    double first_touch = 0.0;  // way at its travel 0
};

// One strip as it was bent last: from placed to free.
struct BentStrip {
    BenchMetal metal;
    stroke::Recording recording;                               // of the last press
    double loaded = 0.0, free = 0.0;                           // bend angle, rad; of the last press
    double radius_loaded = 0.0, radius_free = 0.0;             // inside, mm
    double section_at = 0.0;                                   // mm of the blank: where it is bent most
    std::string held_by;                                       // why it went no further; empty: it did
    int presses = 1;                                           // of this strip, up to now
    std::vector<std::shared_ptr<const EarlierPress>> earlier;  // all but the last; pure bending: none
    double instant = 0.0;                                      // where it is now, as an index of a state
    double punch_travel = 0.0;                                 // the punch's, by the recording's own zero
    double first_touch = 0.0;  // way at that zero: further down for a bent strip
    bool let_go = false;       // nothing touches it
    double springback() const { return loaded - free; }
    double held_instant() const { return stroke::loaded_state(recording); }
    double free_instant() const { return static_cast<double>(recording.states.size()) - 1.0; }
    bool goes_back() const { return instant > held_instant(); }
};

// Where the punch went and turned: the way, or the curvature in pure bending; or the strip was released.
struct BenchMove {
    double way = 0.0;
    bool let_go = false;  // the punch went up out of reach, the moment fell to 0; the way says nothing then
};
bool same(const BenchMove& a, const BenchMove& b);

class BenchPress {
  public:
    // Bends to the deepest way at once, so that everything that is chosen once, such as a picture's view, can
    // be chosen of it. Throws OutOfRange: see trouble_of.
    explicit BenchPress(const BenchSetup& setup);
    ~BenchPress();

    const BenchSetup& setup() const;
    double way_limit() const;               // how far all strips go along, at most deepest()
    const std::string& limited_by() const;  // in words; empty: deepest()
    const std::vector<BentStrip>& deepest_strips() const;

    // New strips go all these ways, held within 0 and the limit; in pure bending the limit either side of 0.
    // released: in pure bending, part of the moment's way back to 0 after the last of them, 0 to 1.
    void follow(const std::vector<BenchMove>& moves, double released = 0.0);
    // A new strip, once.
    void bend_to(double way) { follow({{way}}); }
    const std::vector<BentStrip>& strips() const;

  private:
    struct Inside;
    std::unique_ptr<Inside> in_;
};

// One strip in pure bending through these curvatures. Its recording has all of them, and the way back to no
// moment.
BentStrip bend_purely(const BenchSetup& setup, int metal, const std::vector<BenchMove>& moves,
                      double released = 0.0);

// How far a flat strip has to be bent so that so much of it stays.
struct Overbend {
    BenchSetup setup;
    double wanted = 0.0;  // rad
    double loaded = 0.0, free = 0.0;
    double way = 0.0;
    std::string reason;  // why it cannot be, in words; empty: it can
};
Overbend overbend_for(const BenchSetup& setup, int metal, double wanted,
                      const std::function<bool()>& goes_on);

// As it is written beside two angles with one decimal, in degrees: the difference of what stands there.
double written_springback(double loaded, double free);

}  // namespace overbend::window
