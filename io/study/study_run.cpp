#include "io/study/study_run.h"

#include "io/study/case_record.h"

#include <fmt/format.h>

#include <chrono>
#include <exception>
#include <mutex>
#include <thread>
#include <utility>
#include <vector>

namespace swale {

namespace {

/// Hands out the cases that are left and takes their records in; all under one lock.
class Queue {
  public:
    Queue(const StudyPlan& plan, const Shard& shard, Journal& journal, const StudyListener& listener)
        : plan_(plan), journal_(journal), listener_(listener) {
        for (int number = 1; number <= plan.size(); ++number) {
            if (!shard.has(number)) continue;
            ++progress_.all;
            journal.has(number) ? void(++progress_.done) : left_.push_back(number);
        }
        tell();
    }

    void work() {
        while (const int number = next()) {
            const PlannedCase planned = plan_.at(number);
            const std::string name = fmt::format("{} as case {}", plan_.study().case_file.string(), number);
            const auto record = case_record(planned, name, plan_.study().fields);
            take(number, record.dump(-1, ' ', false, nlohmann::ordered_json::error_handler_t::replace));
        }
    }

    void throw_if_failed() const {
        if (failure_) std::rethrow_exception(failure_);
    }

  private:
    // 0: nothing is left, or the journal failed.
    int next() {
        const std::lock_guard lock(mutex_);
        return failure_ || at_ == left_.size() ? 0 : left_[at_++];
    }

    void take(int number, const std::string& line) {
        const std::lock_guard lock(mutex_);
        if (failure_) return;
        try {
            journal_.add(number, line);
        } catch (...) {
            failure_ = std::current_exception();
            return;
        }
        ++progress_.done;
        ++progress_.done_now;
        tell();
    }

    void tell() {
        progress_.seconds = std::chrono::duration<double>(std::chrono::steady_clock::now() - begin_).count();
        if (listener_) listener_(progress_);
    }

    const StudyPlan& plan_;
    Journal& journal_;
    const StudyListener& listener_;
    std::chrono::steady_clock::time_point begin_ = std::chrono::steady_clock::now();
    std::mutex mutex_;
    std::vector<int> left_;
    std::size_t at_ = 0;
    StudyProgress progress_;
    std::exception_ptr failure_;
};

}  // namespace

void run_study(const StudyPlan& plan, const Shard& shard, int jobs, Journal& journal, const StudyListener& listener) {
    Queue queue(plan, shard, journal, listener);
    {
        std::vector<std::jthread> threads;
        for (int k = 0; k < jobs; ++k) threads.emplace_back([&] { queue.work(); });
    }
    queue.throw_if_failed();
}

}  // namespace swale
