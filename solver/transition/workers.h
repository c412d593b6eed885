#pragma once

#include <condition_variable>
#include <functional>
#include <future>
#include <mutex>
#include <optional>
#include <queue>
#include <set>
#include <utility>

namespace swale {

/// Which of the waiting work goes first: what more work follows from, before what nothing waits for.
enum class Turn { first, next, last };

/// Runs work on two cores beside the caller: of what waits the first in turn, and among equals in the order in which it was
/// given. Work may give more work, but must not wait for it. Outlives the futures that it hands out.
class Workers {
  public:
    /// Gives the result as a future.
    template <class Work>
    auto run(Work work, Turn turn = Turn::next) {
        return std::async(std::launch::async, [this, work = std::move(work), ticket = queue(turn)] {
            wait_for(ticket);
            const Release release{*this};
            return work();
        });
    }

    /// Work that `finish` waits for.
    void give(std::function<void()> work, Turn turn = Turn::next) {
        std::future<void> done = run(std::move(work), turn);
        const std::lock_guard lock(mutex_);
        unfinished_.push(std::move(done));
    }

    /// Waits for all that was given, by other work too; throws what it threw.
    void finish() {
        while (auto done = oldest()) done->get();
    }

  private:
    using Ticket = std::pair<Turn, int>;
    struct Release {
        Workers& of;
        ~Release() { of.leave(); }
    };

    Ticket queue(Turn turn) {
        const std::lock_guard lock(mutex_);
        return *waiting_.emplace(turn, given_++).first;
    }

    void wait_for(const Ticket& ticket) {
        std::unique_lock lock(mutex_);
        changed_.wait(lock, [&] { return free_ > 0 && *waiting_.begin() == ticket; });
        waiting_.erase(ticket);
        --free_;
        changed_.notify_all();
    }

    void leave() {
        const std::lock_guard lock(mutex_);
        ++free_;
        changed_.notify_all();
    }

    std::optional<std::future<void>> oldest() {
        const std::lock_guard lock(mutex_);
        if (unfinished_.empty()) return {};
        std::future<void> done = std::move(unfinished_.front());
        unfinished_.pop();
        return done;
    }

    std::mutex mutex_;
    std::condition_variable changed_;
    std::set<Ticket> waiting_;
    int given_ = 0, free_ = 2;
    std::queue<std::future<void>> unfinished_;  // the last to be made and the first to go: they use all above
};

}  // namespace swale
