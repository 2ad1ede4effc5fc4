// kill -9 in the middle of saving, again and again: nothing acknowledged is missing, nothing retried is doubled.
#include <poll.h>
#include <sys/wait.h>
#include <unistd.h>

#include <csignal>
#include <map>
#include <random>

#include "salon_folder.h"

namespace strandline::store {
namespace {

// Saves from `next` on, each under its own id and one after the other, and tells each acknowledged number.
[[noreturn]] void save_for_ever(const Options& options, int next, int tell) {
  const auto store = Store::open(options);
  if (!store) _exit(2);
  for (;; ++next) {
    if (!(*store)->append(fact("e" + std::to_string(next), "v", next, "{}", "p"))) _exit(3);
    if (!(*store)->save(draft("d" + std::to_string(next), "v", next))) _exit(3);
    if (::write(tell, &next, sizeof next) != sizeof next) _exit(4);
  }
}

TEST(Kill, LosesNothingAndDoublesNothing) {
  const int kills = times(50);
  const SalonFolder salon;
  salon.make();
  std::mt19937 random(7);
  int acknowledged = -1, unanswered_but_kept = 0;
  for (int k = 0; k < kills; ++k) {
    int pipe_ends[2];
    ASSERT_EQ(::pipe(pipe_ends), 0);
    const pid_t child = ::fork();
    ASSERT_GE(child, 0);
    // What was not acknowledged is handed in again under its id, kept or not.
    if (child == 0) save_for_ever(salon.options(), acknowledged + 1, pipe_ends[1]);
    ::close(pipe_ends[1]);
    // Every other one while it is saving, the rest at any time, mostly while it opens the file.
    if (k % 2 == 0) {
      pollfd saving{pipe_ends[0], POLLIN, 0};
      ASSERT_EQ(::poll(&saving, 1, 20000), 1);
    }
    ::usleep(static_cast<useconds_t>(random() % 20000));
    ::kill(child, SIGKILL);
    int status = 0;
    ASSERT_EQ(::waitpid(child, &status, 0), child);
    ASSERT_TRUE(WIFSIGNALED(status)) << "the writer ended by itself with " << WEXITSTATUS(status);
    for (int number; ::read(pipe_ends[0], &number, sizeof number) == sizeof number;) {
      EXPECT_EQ(number, acknowledged + 1);
      acknowledged = number;
    }
    ::close(pipe_ends[0]);
    const auto store = salon.open();
    ASSERT_TRUE(store) << "kill " << k;
    const auto told = *store->facts({.after = std::max(0, acknowledged - 1), .stream = {}, .key = {}, .kind = {}});
    const auto kept = told.empty() ? 0 : told.back().seq;
    for (const Fact& f : told) EXPECT_FALSE(f.closed) << "kill " << k;
    const auto visit = *store->visit("v");
    const auto saved = visit ? visit->seq : 0;
    EXPECT_GE(saved, acknowledged + 1) << "kill " << k;
    EXPECT_LE(saved, kept) << "kill " << k;
    EXPECT_GE(kept, acknowledged + 1) << "kill " << k;
    EXPECT_LE(kept, acknowledged + 2) << "kill " << k;
    unanswered_but_kept += kept == acknowledged + 2;
  }
  const auto verified = Store::verify_file(salon.path());
  ASSERT_TRUE(verified);
  EXPECT_FALSE(verified->broken);
  EXPECT_GT(acknowledged, kills / 2 - 2);
  std::printf("%d kills, %d acknowledged, none missing or doubled; %d kept whose answer was lost\n", kills,
              acknowledged + 1, unanswered_but_kept);
}

}  // namespace
}  // namespace strandline::store
