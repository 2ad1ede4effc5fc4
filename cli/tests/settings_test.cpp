// The configuration file: what it sets, and for every slip what, where and what instead.
#include "src/settings.h"

#include <gtest/gtest.h>
#include <sys/wait.h>
#include <unistd.h>

#include <csignal>
#include <filesystem>
#include <thread>

#include "en/sentences.h"
#include "run_helper.h"
#include "strandline/salon/world.h"

namespace strandline::cli {
namespace {

class Configured : public testing::Test {
 protected:
  void SetUp() override {
    std::string pattern = (std::filesystem::temp_directory_path() / "strandline-config-XXXXXX").string();
    ASSERT_NE(mkdtemp(pattern.data()), nullptr);
    folder_ = pattern;
  }
  void TearDown() override { std::filesystem::remove_all(folder_); }

  std::string file(const std::string& text) const {
    const auto path = folder_ / "strandline.toml";
    std::ofstream(path) << text;
    return path;
  }
  std::filesystem::path folder_;
};

TEST_F(Configured, TheFileOfThePackageIsRight) {
  const std::string packaged = STRANDLINE_SOURCE_DIR "/packaging/strandline.toml";
  const Ran got = ran({"config", "check", packaged});
  EXPECT_EQ(got.code, done) << got.err;
  EXPECT_NE(got.out.find("/var/lib/strandline/salon.sqlite"), std::string::npos) << got.out;
  // What stands in it as a comment is right too.
  std::ifstream in(packaged);
  std::string text;
  for (std::string line; std::getline(in, line); text += line + '\n')
    if (line.starts_with("# [") || (line.starts_with("# ") && line.find(" = ") != std::string::npos)) line.erase(0, 2);
  Settings settings;
  ASSERT_TRUE(read_settings(text, "x", settings)) << text;
  EXPECT_EQ(settings.listen, "0.0.0.0");
  EXPECT_EQ(settings.scale_form, "usb");
  EXPECT_EQ(settings.backup_hours, 0);
  EXPECT_TRUE(settings.make);
}

TEST_F(Configured, SaysWhatIsInForceForAKey) {
  const std::string of = file("[server]\nport = 8000\nnames = [\"a.local\", \"b\"]\n");
  EXPECT_EQ(ran({"config", "get", of, "server.port"}).out, "8000\n");
  EXPECT_EQ(ran({"config", "get", of, "salon.make"}).out, "false\n");
  EXPECT_EQ(ran({"config", "get", of, "server.address"}).out, "127.0.0.1\n");
  EXPECT_EQ(ran({"config", "get", of, "server.prot"}).code, refused);
}

struct Slip {
  const char* text;
  const char* code;
  const char* path;
  std::vector<std::string> said;
};

TEST_F(Configured, EverySlipIsToldWithItsLineAndWhatToWriteInstead) {
  const std::vector<Slip> slips{
      {"[server]\nport = = 3\n", "config_not_toml", "line 2", {"one a line"}},
      {"[server]\nport = 1\nport = 2\n", "config_not_toml", "line 3", {}},
      {"port = 7407\n", "config_unknown_part", "line 1", {"[port]", "salon, server, devices"}},
      {"\n[sever]\nport = 7407\n", "config_unknown_part", "line 2", {"Did you mean server?"}},
      {"server = 3\n", "config_wrong_kind", "line 1, server", {"[server]"}},
      {"[server]\nprot = 1\n", "config_unknown_key", "line 2, server.prot", {"Did you mean port?", "knowledge"}},
      {"[server]\nqwertz = 1\n", "config_unknown_key", "line 2, server.qwertz", {"There are: address, port"}},
      {"[server]\nport = \"80\"\n", "config_wrong_kind", "line 2, server.port", {"a whole number"}},
      {"[server]\nport = 80.5\n", "config_wrong_kind", "line 2, server.port", {"a whole number"}},
      {"[server]\nport = 70000\n", "config_out_of_range", "line 2, server.port", {"70000", "from 0 to 65535"}},
      {"[server]\nport = -1\n", "config_out_of_range", "line 2, server.port", {"-1"}},
      {"[limits]\nthreads = 0\n", "config_out_of_range", "line 2, limits.threads", {"from 1 to 64"}},
      {"[salon]\nmake = \"yes\"\n", "config_wrong_kind", "line 2, salon.make", {"true or false"}},
      {"[salon]\nfile = 3\n", "config_wrong_kind", "line 2, salon.file", {"between quotes"}},
      {"[salon]\nfile = \"salon.sqlite\"\n", "config_not_whole_path", "line 2, salon.file", {"from the / on"}},
      {"[salon]\nstore = \"/a/file\"\n", "config_not_database", "line 2, salon.store", {"postgresql://HOST"}},
      {"[salon]\nstore = \"postgresql://u:secret@h/d#s\"\n",
       "config_not_database",
       "line 2, salon.store",
       {"without a password"}},
      {"[salon]\nfile = \"/a\"\nstore = \"postgresql://h/d#s\"\n", "config_not_both", "line 1, salon", {"Leave out"}},
      {"[server]\nnames = \"a\"\n", "config_wrong_kind", "line 2, server.names", {"a list of texts"}},
      {"[server]\nnames = [\"a\", 3]\n", "config_wrong_kind", "line 2, server.names", {"between quotes"}},
      {"[server]\naddress = \"0.0.0.0\"\n", "config_here_only", "line 2, server.address", {"127.0.0.1", "devices"}},
      {"[devices]\nlisten = \"8.8.8.8\"\n", "config_not_private", "line 2, devices.listen", {"private network"}},
      {"[devices]\nport = 7443\n", "config_alone", "line 1, devices", {"devices.listen"}},
      {"[backups]\nhours = 5\n", "config_alone", "line 1, backups", {"backups.folder"}},
      {"[server]\nlog = \"xml\"\n", "config_not_one_of", "line 2, server.log", {"text json"}},
      {"[server]\nlog = \"text|json\"\n", "config_not_one_of", "line 2, server.log", {"text json"}},
      {"[server]\nlog = \"\"\n", "config_not_one_of", "line 2, server.log", {"text json"}},
  };
  for (const Slip& slip : slips) {
    Settings settings;
    settings.port = 1234;
    const auto got = read_settings(slip.text, "x", settings);
    ASSERT_FALSE(got) << slip.text;
    ASSERT_EQ(got.error().size(), 1u) << slip.text;
    EXPECT_EQ(got.error().front().code, slip.code) << slip.text;
    EXPECT_EQ(got.error().front().path, slip.path) << slip.text;
    EXPECT_EQ(settings.port, 1234) << "nothing is taken over of a file with a slip";
    EXPECT_NE(en::find(slip.code), nullptr) << slip.code;
    const Ran said = ran({"config", "check", file(slip.text)});
    EXPECT_EQ(said.code, refused);
    for (const std::string& part : slip.said) EXPECT_NE(said.err.find(part), std::string::npos) << said.err;
    EXPECT_EQ(ran({"serve", "--config", file(slip.text)}).code, refused);
  }
  const auto many = [&] {
    Settings settings;
    return read_settings("[server]\nport = -1\nprot = 3\n[salon]\nmake = 1\n", "x", settings);
  }();
  EXPECT_EQ(many.error().size(), 3u) << "all of them at once";
  EXPECT_EQ(ran({"config", "check", folder_ / "none.toml"}).code, refused);
}

TEST_F(Configured, TheCommandLineWins) {
  const std::string of = file("[salon]\nfile = \"/no/such/folder/one.sqlite\"\n[server]\naddress = \"127.0.0.2\"\n");
  EXPECT_NE(ran({"serve", "--config", of}).err.find("/no/such/folder/one.sqlite"), std::string::npos);
  // In either order.
  for (const std::vector<std::string>& words :
       {std::vector<std::string>{"serve", "--config", of, "--db", "/no/such/folder/two.sqlite"},
        {"serve", "--db", "/no/such/folder/two.sqlite", "--config", of}})
    EXPECT_NE(ran(words).err.find("/no/such/folder/two.sqlite"), std::string::npos);
  EXPECT_NE(ran({"verify", "--config", of}).err.find("/no/such/folder/one.sqlite"), std::string::npos);
}

TEST_F(Configured, CopiesGoToTheFolderOfTheConfiguration) {
  const std::string db = folder_ / "salon.sqlite", copies = folder_ / "copies";
  const std::string of = file("[salon]\nfile = \"" + db + "\"\n[backups]\nfolder = \"" + copies + "\"\nkeep = 2\n");
  ASSERT_TRUE(salon::make_salon(db, [](salon::World&) -> Result<void> { return {}; }));
  EXPECT_EQ(ran({"backup-check", "--config", of}).code, failed) << "there is none yet";
  const Ran made = ran({"backup", "--config", of});
  ASSERT_EQ(made.code, done) << made.err;
  EXPECT_NE(made.out.find(copies + "/salon-"), std::string::npos) << made.out;
  const Ran tried = ran({"backup-check", "--config", of});
  EXPECT_EQ(tried.code, done) << tried.err;
  EXPECT_NE(tried.out.find("It can be restored."), std::string::npos);
  EXPECT_EQ(ran({"verify", "--config", of}).code, done);
  EXPECT_EQ(ran({"backup"}).code, refused) << "neither a file nor a folder";
}

// The program itself, with what it says on standard error in a file.
class Served : public Configured {
 protected:
  void serve(const std::string& of) {
    const auto program = std::filesystem::read_symlink("/proc/self/exe").parent_path() / "strandline";
    const std::string said = folder_ / "said";
    child_ = fork();
    if (child_ == 0) {
      execl("/bin/sh", "sh", "-c", "exec \"$0\" serve --config \"$1\" --knowledge \"$2\" 2> \"$3\"", program.c_str(),
            of.c_str(), (std::filesystem::current_path() / STRANDLINE_SOURCE_DIR "/knowledge").c_str(), said.c_str(),
            nullptr);
      _exit(127);
    }
  }
  int stop() {
    kill(child_, SIGTERM);
    int status = 0;
    waitpid(child_, &status, 0);
    return WIFEXITED(status) ? WEXITSTATUS(status) : -1;
  }
  std::vector<wire::Json> said() const {
    std::ifstream in(folder_ / "said");
    std::vector<wire::Json> out;
    for (std::string line; std::getline(in, line);) {
      out.push_back(wire::Json::parse(line, nullptr, false));
      EXPECT_FALSE(out.back().is_discarded()) << line;
    }
    return out;
  }
  pid_t child_ = 0;
};

TEST_F(Served, ServesAsConfiguredAndSaysEachAnswerAsJson) {
  const std::string db = folder_ / "salon.sqlite";
  const std::string of = file("[salon]\nfile = \"" + db + "\"\nmake = true\n[server]\nport = 0\nlog = \"json\"\n");
  serve(of);
  constexpr std::chrono::milliseconds look_again{50};
  constexpr int looks = 1200;
  for (int i = 0; i < looks && (!std::filesystem::exists(folder_ / "said") || said().empty()); ++i)
    std::this_thread::sleep_for(look_again);
  ASSERT_FALSE(said().empty());
  const wire::Json started = said().front();
  EXPECT_EQ(started["event"], "started");
  EXPECT_EQ(started["fresh"], true);
  const std::string port = std::to_string(started["port"].get<int>());
  const Ran healthy = ran({"healthy", "--port", port, "--seconds", "60"});
  EXPECT_EQ(healthy.code, done) << healthy.err;
  EXPECT_EQ(stop(), 0);
  ASSERT_EQ(said().size(), 2u);
  EXPECT_EQ(said().back()["event"], "answered");
  EXPECT_EQ(said().back()["route"], "/healthz");
  EXPECT_EQ(said().back()["status"], 200);
  const Ran gone = ran({"healthy", "--port", port});
  EXPECT_EQ(gone.code, failed);
  EXPECT_NE(gone.err.find("nobody answers"), std::string::npos) << gone.err;
}

}  // namespace
}  // namespace strandline::cli
