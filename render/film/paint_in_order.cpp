#include "render/film/paint_in_order.h"

#include <algorithm>
#include <condition_variable>
#include <exception>
#include <mutex>
#include <string>
#include <thread>

#include "render/film/yuv.h"
#include "sim/errors.h"

namespace overbend::film {

using namespace picture;

namespace {

// What a painter leaves for the caller.
struct Slot {
    std::vector<std::uint8_t> bytes;
    int shot = -1;  // which one is in it, ready to be taken
};

// Painters take the next shot that has a free slot; the caller takes them in their order and frees the slots.
class Ring {
  public:
    Ring(std::size_t slots, int shots) : slots_(slots), shots_(shots) {}

    // The next shot to be painted once there is room for it; -1 when there is nothing left to do.
    int next() {
        std::unique_lock<std::mutex> lock(mutex_);
        changed_.wait(lock, [&] { return stopped_ || next_ >= shots_ || next_ < taken_ + size(); });
        if (stopped_ || next_ >= shots_) return -1;
        return next_++;
    }

    std::vector<std::uint8_t>& room_for(int shot) {
        return slots_[static_cast<std::size_t>(shot % size())].bytes;
    }

    void ready(int shot) {
        const std::lock_guard<std::mutex> lock(mutex_);
        slots_[static_cast<std::size_t>(shot % size())].shot = shot;
        changed_.notify_all();
    }

    // Waits for a shot. Throws what a painter threw.
    const std::vector<std::uint8_t>& wait_for(int shot) {
        std::unique_lock<std::mutex> lock(mutex_);
        Slot& slot = slots_[static_cast<std::size_t>(shot % size())];
        changed_.wait(lock, [&] { return failure_ || slot.shot == shot; });
        if (failure_) std::rethrow_exception(failure_);
        return slot.bytes;
    }

    void taken(int shot) {
        const std::lock_guard<std::mutex> lock(mutex_);
        taken_ = shot + 1;
        changed_.notify_all();
    }

    void stop(const std::exception_ptr& why) {
        const std::lock_guard<std::mutex> lock(mutex_);
        stopped_ = true;
        if (why && !failure_) failure_ = why;
        changed_.notify_all();
    }

  private:
    int size() const { return static_cast<int>(slots_.size()); }

    std::mutex mutex_;
    std::condition_variable changed_;
    std::vector<Slot> slots_;
    const int shots_;
    int next_ = 0;
    int taken_ = 0;
    bool stopped_ = false;
    std::exception_ptr failure_;
};

// Painters at work; they have ended when this is gone, whatever ended it.
class Painters {
  public:
    Painters(Ring& ring, int count,
             const std::function<void(int shot, std::vector<std::uint8_t>&)>& paint_one)
        : ring_(ring) {
        try {
            for (int i = 0; i < count; ++i) threads_.emplace_back([this, paint_one] { work(paint_one); });
        } catch (...) {
            join();
            throw;
        }
    }
    ~Painters() { join(); }
    Painters(const Painters&) = delete;
    Painters& operator=(const Painters&) = delete;

  private:
    void work(const std::function<void(int shot, std::vector<std::uint8_t>&)>& paint_one) {
        try {
            for (int shot = ring_.next(); shot >= 0; shot = ring_.next()) {
                paint_one(shot, ring_.room_for(shot));
                ring_.ready(shot);
            }
        } catch (...) {
            ring_.stop(std::current_exception());
        }
    }
    void join() {
        ring_.stop(nullptr);
        for (std::thread& thread : threads_) thread.join();
    }

    Ring& ring_;
    std::vector<std::thread> threads_;
};

}  // namespace

bool look_the_same(const Instant& a, const Instant& b) {
    return a.stroke == b.stroke && a.passage == b.passage && a.at == b.at && a.from == b.from &&
           a.to == b.to && a.part == b.part && a.punch_travel == b.punch_travel && a.caption == b.caption &&
           a.springback_scale == b.springback_scale;
}

std::vector<Shot> shots_of(const FrameList& list) {
    std::vector<Shot> shots;
    for (int i = 0; i < static_cast<int>(list.instants.size()); ++i) {
        if (!shots.empty() && look_the_same(list.instants[shots.back().instant], list.instants[i]))
            ++shots.back().frames;
        else
            shots.push_back({i, 1});
    }
    return shots;
}

int frames_in(const std::vector<Shot>& shots) {
    int frames = 0;
    for (const Shot& shot : shots) frames += shot.frames;
    return frames;
}

int painters_for(int threads, std::size_t shots) {
    if (threads < 0 || threads > 256)
        throw OutOfRange("threads", std::to_string(threads), "it must be 0 (one a core) to 256");
    const int cores = std::max(1, static_cast<int>(std::thread::hardware_concurrency()));
    return std::max(1, std::min(threads == 0 ? cores : threads, static_cast<int>(shots)));
}

void paint_in_order(const ShownJob& job, const FilmOptions& options, const FrameList& list,
                    const std::vector<Shot>& shots, FrameBytes form, int threads, const TakeFrame& take) {
    const int count = painters_for(threads, shots.size());
    const auto paint_one = [&](int shot, std::vector<std::uint8_t>& into) {
        // Kept from frame to frame: allocating them costs as much as painting.
        static thread_local Pixels pixels;
        paint(draw_frame(job, options, list, shots[shot].instant), pixels);
        if (form == FrameBytes::yuv420p) to_yuv420p(pixels, into);
        if (form == FrameBytes::bgrx) into = pixels.bgra;
        if (form == FrameBytes::png) {
            const std::string bytes = png_bytes(pixels);
            into.assign(bytes.begin(), bytes.end());
        }
    };
    Ring ring(static_cast<std::size_t>(count) + 2, static_cast<int>(shots.size()));
    const Painters painters(ring, count, paint_one);
    for (int shot = 0; shot < static_cast<int>(shots.size()); ++shot) {
        take(ring.wait_for(shot), shots[shot]);
        ring.taken(shot);
    }
}

}  // namespace overbend::film
