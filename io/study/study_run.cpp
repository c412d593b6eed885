#include "io/study/study_run.h"

#include "io/study/case_record.h"

#include <fmt/format.h>

#include <algorithm>
#include <chrono>
#include <exception>
#include <mutex>
#include <thread>
#include <utility>
#include <vector>

namespace swale {

namespace {

/// Hands out the chains that are left and takes their records in; all under one lock.
class Queue {
  public:
    Queue(const StudyPlan& plan, const Shard& shard, Journal& journal, const StudyListener& listener)
        : plan_(plan), journal_(journal), listener_(listener) {
        std::vector<std::vector<int>> chains = plan.chains();
        for (std::size_t k = 0; k < chains.size(); ++k)
            if (shard.has(static_cast<int>(k) + 1)) add(std::move(chains[k]));
        tell();
    }

    void work() {
        while (const std::vector<int>* chain = next()) {
            std::vector<PlannedCase> planned;
            for (const int number : *chain) planned.push_back(plan_.at(number));
            const auto records = case_records(planned, plan_.study().case_file.string(), plan_.study().fields);
            for (std::size_t k = 0; k < records.size(); ++k)
                take((*chain)[k], records[k].dump(-1, ' ', false, nlohmann::ordered_json::error_handler_t::replace));
        }
    }

    void throw_if_failed() const {
        if (failure_) std::rethrow_exception(failure_);
    }

  private:
    void add(std::vector<int> chain) {
        const auto known = std::ranges::count_if(chain, [this](int number) { return journal_.has(number); });
        progress_.all += static_cast<int>(chain.size());
        progress_.done += static_cast<int>(known);
        if (static_cast<std::size_t>(known) < chain.size()) left_.push_back(std::move(chain));
    }

    // Absent: nothing is left, or the journal failed.
    const std::vector<int>* next() {
        const std::lock_guard lock(mutex_);
        return failure_ || at_ == left_.size() ? nullptr : &left_[at_++];
    }

    void take(int number, const std::string& line) {
        const std::lock_guard lock(mutex_);
        if (failure_ || journal_.has(number)) return;
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
    std::vector<std::vector<int>> left_;
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
