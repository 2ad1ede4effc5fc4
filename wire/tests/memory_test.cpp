// Memory that runs out while a document is read: an exception that leaves everything as it was, whatever allocation it
// is that fails, and whether or not memory comes back.
#include <gtest/gtest.h>

#include <cstdlib>
#include <fstream>
#include <iterator>
#include <limits>
#include <new>

#include "strandline/wire/document.h"

namespace {

// Of the thread that armed it.
struct Heap {
  static constexpr long never = std::numeric_limits<long>::max();
  long fails_at = never;  // the allocation with this number, counted from 0
  bool for_good = false;  // and all after it
  long calls = 0, live = 0;

  bool refuses() {
    if (fails_at == never) return false;
    const long n = calls++;
    return for_good ? n >= fails_at : n == fails_at;
  }
};
thread_local Heap heap;

void* taken(std::size_t size, std::size_t alignment) {
  if (heap.refuses()) throw std::bad_alloc();
  void* out = alignment == 0 ? std::malloc(size + (size == 0))
                             : std::aligned_alloc(alignment, (size + alignment - 1) / alignment * alignment);
  if (!out) throw std::bad_alloc();
  ++heap.live;
  return out;
}

void given_back(void* memory) {
  if (memory) --heap.live;
  std::free(memory);
}

}  // namespace

void* operator new(std::size_t size) { return taken(size, 0); }
void* operator new(std::size_t size, std::align_val_t alignment) {
  return taken(size, static_cast<std::size_t>(alignment));
}
void operator delete(void* memory) noexcept { given_back(memory); }
void operator delete(void* memory, std::size_t) noexcept { given_back(memory); }
void operator delete(void* memory, std::align_val_t) noexcept { given_back(memory); }
void operator delete(void* memory, std::size_t, std::align_val_t) noexcept { given_back(memory); }

namespace strandline::wire {
namespace {

std::string text_of(const std::string& file) {
  std::ifstream in(STRANDLINE_SOURCE_DIR "/knowledge/demo/" + file);
  return {std::istreambuf_iterator<char>(in), {}};
}

struct Tally {
  long allocations = 0, failures = 0;
};

// `work` with each of its allocations failing in turn, or about `most` of them.
template <class Work>
Tally with_each_failing(const Work& work, bool for_good, long most = 400) {
  work();  // what is kept for good is there now
  heap = {.fails_at = Heap::never - 1, .calls = 0, .live = heap.live};
  work();
  Tally out{.allocations = heap.calls};
  const long step = 1 + out.allocations / most;
  for (long n = 0; n < out.allocations; n += step) {
    bool failed = false;
    const long before = heap.live;
    heap = {.fails_at = n, .for_good = for_good, .calls = 0, .live = before};
    try {
      work();
    } catch (const std::bad_alloc&) {
      failed = true;
    }
    const long after = heap.live;
    heap = {.live = after};
    EXPECT_TRUE(failed) << "allocation " << n;
    EXPECT_EQ(after, before) << "allocation " << n << " leaves something behind";
    out.failures += failed;
  }
  return out;
}

const Sources sources{[](const std::string&) { return std::optional(Shelf{}); },
                      [](const std::string&) { return std::optional(Policy{}); }};

class OutOfMemory : public testing::TestWithParam<bool> {
 protected:
  template <class Work>
  static void expect_clean(const Work& work) {
    const Tally tally = with_each_failing(work, GetParam());
    EXPECT_GT(tally.failures, 20);
  }
};

TEST_P(OutOfMemory, ReadingTextEndsInAnException) {
  const std::string text = text_of("visits/salt_and_pepper_two_tones.json");
  expect_clean([&] { static_cast<void>(parse(text)); });
  std::string deep;
  for (int i = 0; i < 60; ++i) deep += R"([{"a":[],"b":)";
  expect_clean([&] { static_cast<void>(parse(deep + "0")); });
}

TEST_P(OutOfMemory, RefusingTextEndsInAnException) {
  const std::string text = text_of("visits/salt_and_pepper_two_tones.json");
  for (const std::string& bad :
       {text.substr(0, text.size() / 2), text + "x", R"({"a":{"b":[1,{"c":2,"c":3}]}})" + text})
    expect_clean([&] { static_cast<void>(print(problems_json(parse(bad).error()))); });
}

TEST_P(OutOfMemory, ReadingAVisitEndsInAnException) {
  const Json document = *parse(text_of("visits/my_own_bowls.json"));
  expect_clean([&] { static_cast<void>(read_visit(document, sources)); });
  const Json wrong =
      *parse(R"({"schema":"strandline.visit/1","head":{"areas":[{"id":1,"spans":[{},{"level":99}]}]},"x":0})");
  expect_clean([&] { static_cast<void>(problems_json(read_visit(wrong, sources).error())); });
}

TEST_P(OutOfMemory, ReadingAShelfEndsInAnException) {
  const Json document = *parse(text_of("shelf.json"));
  expect_clean([&] { static_cast<void>(read_shelf(document)); });
}

INSTANTIATE_TEST_SUITE_P(OnceAndForGood, OutOfMemory, testing::Bool(),
                         [](const auto& each) { return each.param ? "ForGood" : "Once"; });

}  // namespace
}  // namespace strandline::wire
