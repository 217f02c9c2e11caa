// The bench's own thread: bends what is wanted now, and paints it. The setup is built again only when it
// changes; on the way down the strips go on from where they are.

#pragma once

#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "render/picture/painter.h"
#include "scenes/window/bench/board.h"
#include "scenes/window/shared/background.h"

namespace overbend::window {

struct BenchRequest {
    BenchSetup setup;
    std::vector<BenchMove> moves;  // see BenchPress::follow
    double released = 0.0;
    BoardSize size;
    BoardInfo look;
};
bool same(const BenchRequest& a, const BenchRequest& b);

// What is stated in words: rad, mm.
struct BenchReading {
    std::string name;
    double loaded = 0.0, free = 0.0;
    double radius_loaded = 0.0, radius_free = 0.0;
    bool let_go = false;  // else the free ones are not to be told
    int presses = 1;
};

struct BenchShown {
    BenchRequest request;
    std::optional<BenchTrouble> trouble;  // then there is nothing but this
    std::shared_ptr<picture::Pixels> board;
    std::vector<BenchReading> readings;
    double way = 0.0;     // as it was reached; curvature of the first strip once it is free
    std::string held_by;  // why a strip went no further than that; empty: none did
    double limit = 0.0;
    std::string limited_by;  // in words; empty: nothing but the tools' room
    double px_per_mm = 1.0;  // of the first strip's picture
    double bend_seconds = 0.0, paint_seconds = 0.0;
};

class BenchWork {
  public:
    BenchWork();
    void show(const BenchRequest& request);
    const std::optional<BenchRequest>& requested() const { return requested_; }
    bool busy() const { return background_.busy(); }
    // What has been finished, once. Throws what bending or drawing threw.
    std::optional<BenchShown> take() { return background_.take(); }

  private:
    struct Bench;  // what the working thread keeps
    std::shared_ptr<Bench> bench_;
    std::optional<BenchRequest> requested_;
    Background<BenchShown> background_;
};

}  // namespace overbend::window
