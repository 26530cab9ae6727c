// SPDX-License-Identifier: MIT
#include "plan/search/parallel.hpp"

#include "plan/search/work.hpp"

#include <condition_variable>
#include <cstdint>
#include <thread>
#include <vector>

namespace holdwater::plan {
namespace {

/// Threads that wait for work from the first time it is asked for to the end of the program: to make them anew for
/// every short stretch of work would cost a fifth of it.
class Workers {
  public:
    Workers() {
        const unsigned others = std::max(1U, std::thread::hardware_concurrency()) - 1U;
        for (unsigned i = 0; i < others; ++i) {
            threads_.emplace_back([this] { wait_for_work(); });
        }
    }
    ~Workers() {
        {
            const std::scoped_lock lock(mutex_);
            over_ = true;
        }
        begin_.notify_all();
        threads_.clear();  // joins
    }
    Workers(const Workers&) = delete;
    Workers& operator=(const Workers&) = delete;

    void run(const std::function<void()>& work) {
        const std::unique_lock alone(in_use_, std::try_to_lock);
        if (!alone.owns_lock() || threads_.empty()) {
            work();
            return;
        }
        {
            const std::scoped_lock lock(mutex_);
            work_ = &work;
            ++round_;
            still_at_it_ = threads_.size();
        }
        begin_.notify_all();
        work();
        std::unique_lock lock(mutex_);
        done_.wait(lock, [this] { return still_at_it_ == 0; });
    }

  private:
    void wait_for_work() {
        std::uint64_t seen = 0;
        for (;;) {
            const std::function<void()>* work = nullptr;
            {
                std::unique_lock lock(mutex_);
                begin_.wait(lock, [&] { return over_ || round_ != seen; });
                if (over_) {
                    return;
                }
                seen = round_;
                work = work_;
            }
            (*work)();
            const std::scoped_lock lock(mutex_);
            if (--still_at_it_ == 0) {
                done_.notify_one();
            }
        }
    }

    std::mutex in_use_;  // held by whoever has given the work
    std::mutex mutex_;   // of all below
    std::condition_variable begin_;
    std::condition_variable done_;
    const std::function<void()>* work_ = nullptr;
    std::uint64_t round_ = 0;
    std::size_t still_at_it_ = 0;
    bool over_ = false;
    std::vector<std::jthread> threads_;
};

thread_local bool inside = false;

}  // namespace

void on_all_processors(const std::function<void()>& work) {
    if (inside) {
        work();
        return;
    }
    static Workers workers;
    workers.run([&work, bound = WorkBound::current()] {
        const WorkingFor own(bound);
        inside = true;
        work();
        inside = false;
    });
}

}  // namespace holdwater::plan
