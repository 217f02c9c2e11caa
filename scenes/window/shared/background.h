// Work on a thread of its own, so that a window never waits for it. The newest request alone counts: what was
// asked for before is cancelled or never begun.

#pragma once

#include <atomic>
#include <condition_variable>
#include <exception>
#include <functional>
#include <mutex>
#include <optional>
#include <thread>

namespace overbend::window {

// Thrown by work that is to stop; never reaches the caller.
struct Cancelled {};

// What work is given to ask whether it is still wanted.
class Wanted {
  public:
    explicit Wanted(const std::atomic<bool>& cancelled) : cancelled_(&cancelled) {}
    bool still() const { return !cancelled_->load(std::memory_order_relaxed); }
    void check() const {
        if (!still()) throw Cancelled();
    }

  private:
    const std::atomic<bool>* cancelled_;
};

template <class Result>
class Background {
  public:
    using Work = std::function<Result(const Wanted&)>;

    Background() : thread_([this] { loop(); }) {}
    ~Background() {
        {
            const std::lock_guard<std::mutex> lock(mutex_);
            over_ = true;
            waiting_ = nullptr;
            cancelled_ = true;
        }
        wake_.notify_all();
        thread_.join();
    }
    Background(const Background&) = delete;
    Background& operator=(const Background&) = delete;

    // Cancels what is being done. What has been finished and not taken yet is dropped too.
    void start(Work work) {
        {
            const std::lock_guard<std::mutex> lock(mutex_);
            waiting_ = std::move(work);
            finished_.reset();
            error_ = nullptr;
            cancelled_ = true;
        }
        wake_.notify_all();
    }

    // Lets what is being done come to its end, and does this next instead of what waits: for requests that
    // come faster than they can be fulfilled, where each result is worth showing.
    void start_next(Work work) {
        {
            const std::lock_guard<std::mutex> lock(mutex_);
            waiting_ = std::move(work);
        }
        wake_.notify_all();
    }

    void cancel() {
        const std::lock_guard<std::mutex> lock(mutex_);
        waiting_ = nullptr;
        cancelled_ = true;
    }

    bool busy() const {
        const std::lock_guard<std::mutex> lock(mutex_);
        return working_ || waiting_;
    }

    // What has been finished, once. Throws what the work threw.
    std::optional<Result> take() {
        std::optional<Result> result;
        std::exception_ptr error;
        {
            const std::lock_guard<std::mutex> lock(mutex_);
            result.swap(finished_);
            std::swap(error, error_);
        }
        if (error) std::rethrow_exception(error);
        return result;
    }

  private:
    void loop() {
        std::unique_lock<std::mutex> lock(mutex_);
        while (true) {
            wake_.wait(lock, [this] { return over_ || waiting_; });
            if (over_) return;
            const Work work = std::move(waiting_);
            waiting_ = nullptr;
            working_ = true;
            cancelled_ = false;
            lock.unlock();
            std::optional<Result> result;
            std::exception_ptr error;
            try {
                result.emplace(work(Wanted(cancelled_)));
            } catch (const Cancelled&) {
            } catch (...) {
                error = std::current_exception();
            }
            lock.lock();
            working_ = false;
            if (cancelled_) continue;
            if (result) finished_ = std::move(result);
            error_ = error;
        }
    }

    mutable std::mutex mutex_;
    std::condition_variable wake_;
    Work waiting_;
    std::optional<Result> finished_;
    std::exception_ptr error_;
    std::atomic<bool> cancelled_{false};
    bool working_ = false;
    bool over_ = false;
    std::thread thread_;  // last: it uses all of the above
};

}  // namespace overbend::window
