// People from the command line of the salon's own machine.
#include <gtest/gtest.h>
#include <pty.h>
#include <sys/wait.h>
#include <termios.h>
#include <unistd.h>

#include <csignal>
#include <filesystem>

#include "run_helper.h"
#include "src/unseen.h"
#include "strandline/salon/world.h"

namespace strandline::cli {
namespace {

class PeopleCommand : public testing::Test {
 protected:
  void SetUp() override {
    std::string pattern = (std::filesystem::temp_directory_path() / "strandline-people-XXXXXX").string();
    ASSERT_NE(mkdtemp(pattern.data()), nullptr);
    folder_ = pattern;
    db_ = folder_ / "salon.sqlite";
    ASSERT_TRUE(salon::make_salon(db_, [](salon::World&) { return Result<void>(); }));
  }
  void TearDown() override { std::filesystem::remove_all(folder_); }
  Ran people(std::vector<std::string> words, const std::string& typed = "") const {
    words.insert(words.begin(), "people");
    words.insert(words.end(), {"--db", db_});
    return ran(words, typed);
  }

  std::filesystem::path folder_;
  std::string db_;
};

// Typed at a terminal: whether it shows what is typed once `signal` has ended the program at its prompt.
bool shows_after(int signal) {
  int far = -1, near = -1;
  EXPECT_EQ(openpty(&far, &near, nullptr, nullptr, nullptr), 0);
  const pid_t child = fork();
  if (child == 0) {
    dup2(near, STDIN_FILENO);
    sigset_t none;
    sigemptyset(&none);
    sigprocmask(SIG_SETMASK, &none, nullptr);  // a server that ran in this program before holds some back
    alarm(60);
    const Unseen unseen(true);
    const char ready = 'r';
    if (write(near, &ready, 1) != 1) _exit(1);
    for (;;) pause();
  }
  char ready = 0;
  EXPECT_EQ(read(far, &ready, 1), 1);
  termios now{};
  tcgetattr(near, &now);
  EXPECT_EQ(now.c_lflag & ECHO, 0u) << "hidden while it is typed";
  kill(child, signal);
  int status = 0;
  waitpid(child, &status, 0);
  EXPECT_TRUE(WIFSIGNALED(status));
  EXPECT_EQ(WTERMSIG(status), signal);
  tcgetattr(near, &now);
  close(far), close(near);
  return (now.c_lflag & ECHO) != 0;
}

TEST(Prompt, LeavesTheTerminalAsItWasHoweverItEnds) {
  for (const int signal : {SIGINT, SIGTERM, SIGHUP, SIGQUIT}) EXPECT_TRUE(shows_after(signal)) << signal;
}

TEST_F(PeopleCommand, MakesASalonAndLooksAfterItsPeople) {
  EXPECT_NE(people({"list"}).out.find("nobody signs in"), std::string::npos);
  const Ran early = people({"add", "Bo", "--role", "colourist"}, "seven wet towels at nine\n");
  EXPECT_EQ(early.code, refused);
  EXPECT_NE(early.err.find("no owner yet"), std::string::npos) << early.err;
  const Ran nowhere = people({"add", "Ada", "--role", "owner", "--zone", "Nowhere"}, "brown tape on blue jars\n");
  EXPECT_EQ(nowhere.code, refused);
  EXPECT_NE(nowhere.err.find("\"Nowhere\" is no time zone"), std::string::npos) << nowhere.err;
  const Ran made =
      people({"add", "Ada Invented", "--role", "owner,colourist", "--zone", "Europe/Vienna", "--shelf", "empty"},
             "brown tape on blue jars\n");
  ASSERT_EQ(made.code, done) << made.err;
  EXPECT_NE(made.out.find("everybody signs in"), std::string::npos) << made.out;
  EXPECT_NE(ran({"shelf", "list", "--db", db_}).out.find("Our shelf"), std::string::npos);
  EXPECT_EQ(people({"add", "Bo", "--role", "assistant"}, "short\n").code, refused);
  EXPECT_EQ(people({"add", "Bo", "--role", "assistant"}, "seven wet towels at nine\n").code, done);
  EXPECT_EQ(people({"add", "Bo", "--role", "barber"}, "seven wet towels at nine\n").code, refused);
  EXPECT_EQ(people({"role", "bo", "--role", "colourist"}).code, done);
  EXPECT_EQ(people({"reset", "Bo"}, "nine wet towels at seven\n").code, done);
  EXPECT_EQ(people({"revoke", "Bo"}).code, done);
  EXPECT_EQ(people({"list"}).out, "Ada Invented  colourist, owner\nBo  colourist\n");
  EXPECT_EQ(people({"leave", "Bo"}).code, done);
  EXPECT_NE(people({"list"}).out.find("Bo  colourist  (left)"), std::string::npos);
  const Ran last = people({"leave", "Ada Invented"});
  EXPECT_EQ(last.code, refused);
  EXPECT_NE(last.err.find("the only owner"), std::string::npos) << last.err;
  EXPECT_EQ(people({"revoke", "Nobody"}).code, refused);
}

TEST_F(PeopleCommand, IsToldThatAServerHasTheFile) {
  const auto world = salon::real_world(db_);
  const Ran got = people({"list"});
  EXPECT_EQ(got.code, failed);
  EXPECT_NE(got.err.find("already running"), std::string::npos) << got.err;
}

}  // namespace
}  // namespace strandline::cli
