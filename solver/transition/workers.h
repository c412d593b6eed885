#pragma once

#include <functional>
#include <future>
#include <semaphore>
#include <utility>

namespace swale {

/// Runs work on two cores beside the caller, in the order in which it was given. Outlives the futures that it hands out.
class Workers {
  public:
    template <class Work>
    auto run(Work work) {
        return std::async(std::launch::async, [this, work = std::move(work)] {
            cores_.acquire();
            struct Release {
                std::counting_semaphore<2>& of;
                ~Release() { of.release(); }
            } release{cores_};
            return work();
        });
    }

  private:
    std::counting_semaphore<2> cores_{2};
};

}  // namespace swale
