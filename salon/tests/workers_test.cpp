#include "strandline/salon/workers.h"

#include <gtest/gtest.h>

#include <atomic>
#include <stdexcept>

namespace strandline::salon {
namespace {

TEST(Workers, VisitEveryNumberOnce) {
  for (int threads : {1, 2, 5}) {
    Workers workers(threads);
    for (int count : {0, 1, 2, 7, 1000}) {
      std::vector<std::atomic<int>> seen(static_cast<std::size_t>(count));
      workers.run(count, [&](int begin, int end) {
        for (int i = begin; i < end; ++i) ++seen[static_cast<std::size_t>(i)];
      });
      for (const auto& s : seen) EXPECT_EQ(s, 1);
    }
  }
}

TEST(Workers, RunJobsWithinJobsAndFromManyThreads) {
  Workers workers(2);
  std::atomic<int> sum = 0;
  const auto nested = [&] {
    workers.run(8, [&](int begin, int end) {
      for (int i = begin; i < end; ++i) workers.run(10, [&](int b, int e) { sum += e - b; });
    });
  };
  std::vector<std::thread> callers;
  for (int i = 0; i < 4; ++i) callers.emplace_back(nested);
  for (auto& caller : callers) caller.join();
  EXPECT_EQ(sum, 4 * 8 * 10);
}

TEST(Workers, ThrowTheBodysExceptionToItsCaller) {
  Workers workers(3);
  EXPECT_THROW(workers.run(100, [](int, int) { throw std::runtime_error("x"); }), std::runtime_error);
  int count = 0;
  workers.run(1, [&](int, int) { ++count; });
  EXPECT_EQ(count, 1);
}

}  // namespace
}  // namespace strandline::salon
