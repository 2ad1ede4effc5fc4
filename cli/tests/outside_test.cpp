// What comes to the command line from outside its document: files, limits, addresses.
#include <fcntl.h>
#include <gtest/gtest.h>
#include <sys/resource.h>
#include <sys/stat.h>
#include <sys/wait.h>
#include <unistd.h>

#include <cstdlib>
#include <filesystem>
#include <future>

#include "run_helper.h"
#include "strandline/salon/world.h"

namespace strandline::cli {
namespace {

class Outside : public testing::Test {
 protected:
  void SetUp() override {
    std::string pattern = (std::filesystem::temp_directory_path() / "strandline-outside-XXXXXX").string();
    ASSERT_NE(mkdtemp(pattern.data()), nullptr);
    folder_ = pattern;
  }
  void TearDown() override { std::filesystem::remove_all(folder_); }

  // The program itself, with what it may write limited to `bytes`; its exit status as wait() tells it.
  int limited(const char* command, rlim_t bytes) const {
    const auto program = std::filesystem::read_symlink("/proc/self/exe").parent_path() / "strandline";
    const pid_t child = fork();
    if (child == 0) {
      const rlimit most{bytes, bytes};
      setrlimit(RLIMIT_FSIZE, &most);
      execl("/bin/sh", "sh", "-c", command, program.c_str(), (folder_ / "out").c_str(), demo("my_own_bowls").c_str(),
            nullptr);
      _exit(127);
    }
    int status = 0;
    waitpid(child, &status, 0);
    return status;
  }

  std::filesystem::path folder_;
};

TEST_F(Outside, APipeInPlaceOfAFileIsRefusedAtOnce) {
  const std::string pipe = folder_ / "pipe";
  ASSERT_EQ(mkfifo(pipe.c_str(), 0600), 0);
  for (const std::vector<std::string>& words :
       {std::vector<std::string>{"assess", pipe}, {"assess", demo("my_own_bowls"), "--shelf", pipe}}) {
    auto asked = std::async(std::launch::async, [&] { return ran(words); });
    const bool in_time = asked.wait_for(std::chrono::seconds(5)) == std::future_status::ready;
    if (!in_time) close(open(pipe.c_str(), O_WRONLY));  // lets the reader go on
    ASSERT_TRUE(in_time) << "waits for a writer";
    const Ran got = asked.get();
    EXPECT_EQ(got.code, failed);
    EXPECT_NE(got.err.find("no ordinary file"), std::string::npos) << got.err;
    EXPECT_NE(got.err.find("standard input"), std::string::npos) << got.err;
  }
  EXPECT_EQ(ran({"assess", folder_}).code, failed);
}

TEST_F(Outside, SecondsMustBeANumberInRange) {
  for (const char* seconds : {"nan", "-nan", "inf", "-1", "3601", "1e999", "", "x"}) {
    const Ran got = ran({"plan", demo("my_own_bowls"), "--seconds", seconds});
    EXPECT_EQ(got.code, refused) << seconds;
    EXPECT_TRUE(got.out.empty()) << seconds;
  }
  EXPECT_EQ(ran({"substitute", demo("my_own_bowls"), "--product", "x", "--weighed", "nan"}).code, refused);
}

TEST_F(Outside, ListensOnThisMachineOnly) {
  for (const char* host : {"0.0.0.0", "::", "192.168.1.2", "example.org", "127.0.0.1.example.org", "127.1", ""}) {
    // Not even the salon file is looked at.
    const Ran got = ran({"serve", "--port", "0", "--db", "/no/such/folder/salon.sqlite", "--host", host});
    EXPECT_EQ(got.code, refused) << host;
    EXPECT_NE(got.err.find("this machine only"), std::string::npos) << got.err;
  }
  for (const char* host : {"127.0.0.1", "127.0.0.2", "::1", "localhost"}) {
    EXPECT_EQ(ran({"serve", "--port", "0", "--db", "/no/such/folder/salon.sqlite", "--host", host}).code, failed)
        << host;
  }
}

TEST_F(Outside, WordsOfTheCommandLineCannotWriteToTheTerminal) {
  for (const std::vector<std::string>& words : {std::vector<std::string>{"\x1b[31m"},
                                                {"assess", "/no\x1b[31m"},
                                                {"assess", "x", "--light", "\x1b[31m"},
                                                {"serve", "--db", "/no/\x1b[31m"},
                                                {"serve", "--host", "\x1b[31m"}}) {
    const Ran got = ran(words);
    EXPECT_NE(got.code, done);
    EXPECT_EQ((got.out + got.err).find('\x1b'), std::string::npos) << got.err;
  }
}

TEST_F(Outside, AFullQuotaIsToldAndKillsNothing) {
  // What is written goes to the second word; 4096 bytes hold less than the answer.
  const int status = limited("\"$0\" assess \"$2\" --json > \"$1\" 2>/dev/null", 4096);
  ASSERT_TRUE(WIFEXITED(status));
  EXPECT_EQ(WEXITSTATUS(status), failed);
  // A salon file that cannot be made to its full size.
  const int served = limited("\"$0\" serve --port 0 --new --db \"$1.sqlite\" 2>/dev/null", 4096);
  ASSERT_TRUE(WIFEXITED(served));
  EXPECT_EQ(WEXITSTATUS(served), failed);
  EXPECT_FALSE(std::filesystem::exists(folder_ / "out.sqlite"));
}

TEST_F(Outside, NoSalonFileIsMadeUnasked) {
  const std::string db = folder_ / "salon.sqlite";
  for (const std::vector<std::string>& words : {std::vector<std::string>{"serve", "--port", "0", "--db", db},
                                                {"serve", "--port", "0", "--as-found", "--db", db},
                                                {"verify", "--db", db}}) {
    const Ran got = ran(words);
    EXPECT_EQ(got.code, failed);
    EXPECT_NE(got.err.find("There is no salon at " + db), std::string::npos) << got.err;
  }
  EXPECT_TRUE(std::filesystem::is_empty(folder_));
}

TEST_F(Outside, ASecondProgramIsToldThatOneIsRunning) {
  const std::string db = folder_ / "salon.sqlite";
  ASSERT_TRUE(salon::make_salon(db, [](salon::World&) { return Result<void>(); }));
  const auto world = salon::real_world(db);
  ASSERT_TRUE(world);
  const Ran got = ran({"serve", "--port", "0", "--new", "--db", db});
  EXPECT_EQ(got.code, failed);
  EXPECT_NE(got.err.find("already running with the salon file " + db), std::string::npos) << got.err;
}

TEST_F(Outside, VerifyFindsAChangedEntry) {
  const std::string db = folder_ / "salon.sqlite", body = R"({"grams":30})";
  const auto made = salon::make_salon(db, [&](salon::World& world) -> Result<void> {
    EXPECT_TRUE(world.store->append({world.new_id(), "v", 0, world.now(), "mixed", body}));
    return {};
  });
  ASSERT_TRUE(made);
  const Ran whole = ran({"verify", "--db", db});
  EXPECT_EQ(whole.code, done) << whole.err;
  EXPECT_NE(whole.out.find("Every one of 1 facts and every draft is as it was written"), std::string::npos)
      << whole.out;
  std::ifstream in(db, std::ios::binary);
  std::string bytes(std::istreambuf_iterator<char>(in), {});
  bytes.at(bytes.find(body) + body.size() - 3) ^= 1;
  std::ofstream(db, std::ios::binary) << bytes;
  const Ran changed = ran({"verify", "--db", db});
  EXPECT_EQ(changed.code, failed);
  EXPECT_NE(changed.err.find("Entry 1 was changed"), std::string::npos) << changed.err;
}

TEST_F(Outside, ACopyAndTheWordsOfTheKeyBringALostSalonBack) {
  const std::string db = folder_ / "salon.sqlite", copy = folder_ / "copy.sqlite", words = folder_ / "words.txt";
  ASSERT_EQ(ran({"backup", copy, "--db", db}).code, failed) << "there is nothing to copy";
  ASSERT_TRUE(salon::make_salon(db, [&](salon::World& world) -> Result<void> {
    EXPECT_TRUE(world.store->save({"save-1", "v", 0, world.now(), R"({"client":"Somebody Invented"})", ""}));
    return {};
  }));
  const Ran taken = ran({"backup", copy, "--db", db});
  ASSERT_EQ(taken.code, done) << taken.err;
  const Ran printed = ran({"key", "--db", db});
  ASSERT_EQ(printed.code, done) << printed.err;
  std::ofstream(words) << printed.out;
  for (const char* suffix : {"", "-head", "-key"}) std::filesystem::remove(db + suffix);
  const Ran keyless = ran({"restore", copy, "--db", db});
  EXPECT_EQ(keyless.code, failed);
  EXPECT_NE(keyless.err.find("strandline key"), std::string::npos) << keyless.err;
  std::ofstream(folder_ / "wrong.txt") << "lusab babad";
  EXPECT_EQ(ran({"key", "--words", (folder_ / "wrong.txt").string(), "--db", db}).code, failed);
  const Ran again = ran({"key", "--words", words, "--db", db});
  EXPECT_EQ(again.code, done) << again.err;
  const Ran restored = ran({"restore", copy, "--db", db});
  EXPECT_EQ(restored.code, done) << restored.err;
  EXPECT_EQ(ran({"verify", "--db", db}).code, done);
  EXPECT_EQ((*salon::real_world(db)->store->visits())[0].client, "Somebody Invented");
}

}  // namespace
}  // namespace strandline::cli
