// The scale over the door. A pipe gives reports as a raw USB node does: one write, one read.
#include <fcntl.h>
#include <sys/stat.h>

#include <algorithm>

#include "running.h"

namespace strandline::server {
namespace {

class Weighing : public Running {
 protected:
  void SetUp() override {
    char folder[] = "/tmp/strandline-weighing-XXXXXX";
    ASSERT_NE(mkdtemp(folder), nullptr);
    folder_ = folder;
    const std::string node = folder_ / "node";
    ASSERT_EQ(mkfifo(node.c_str(), 0600), 0);
    pipe_ = open(node.c_str(), O_RDWR);
    scale_ = {node, salon::ScaleForm::usb, 9600};
    Running::SetUp();
  }
  void TearDown() override {
    Running::TearDown();
    close(pipe_);
    std::filesystem::remove_all(folder_);
  }
  // Tenths of grams, as a scale that shows them; 4 = stable, 3 = in motion.
  void put(int tenths, unsigned char state = 4) const {
    const unsigned char report[] = {
        3, state, 2, 0xff, static_cast<unsigned char>(tenths & 0xff), static_cast<unsigned char>(tenths >> 8)};
    ASSERT_EQ(write(pipe_, report, sizeof report), static_cast<ssize_t>(sizeof report));
  }
  Json after(std::int64_t seq) {
    const auto got = client_->Get("/api/v1/scale?after=" + std::to_string(seq));
    return got ? Json::parse(got->body) : Json();
  }
  int pipe_ = -1;
  std::filesystem::path folder_;
};

TEST_F(Weighing, IsToldAsItChanges) {
  put(125, 3);
  const Json moving = after(0);
  EXPECT_EQ(moving["state"], "moving");
  EXPECT_EQ(moving["grams"], 12.5);
  put(130);
  const Json stable = after(moving["seq"]);
  EXPECT_EQ(stable["state"], "stable");
  EXPECT_EQ(stable["grams"], 13);
}

// From the device to whoever waits for it. The quickest of many: what a loaded machine adds is not the scale's.
TEST_F(Weighing, ReachesAPageWithinATenthOfASecond) {
  put(1);
  std::int64_t seq = after(0)["seq"];
  auto quickest = std::chrono::steady_clock::duration::max();
  for (int i = 2; i < 22; ++i) {
    std::chrono::steady_clock::time_point written;
    std::thread hand([&] {
      std::this_thread::sleep_for(std::chrono::milliseconds(20));
      written = std::chrono::steady_clock::now();
      put(i);
    });
    const Json told = after(seq);
    const auto now = std::chrono::steady_clock::now();
    hand.join();
    EXPECT_DOUBLE_EQ(told["grams"], i / 10.0);
    seq = told["seq"];
    quickest = std::min(quickest, now - written);
  }
  EXPECT_LE(quickest, std::chrono::milliseconds(100));
}

TEST_F(Weighing, EndsWithTheServer) {
  put(1);
  const std::int64_t seq = after(0)["seq"];
  std::thread waits([&] { after(seq); });
  std::this_thread::sleep_for(std::chrono::milliseconds(50));
  const auto start = std::chrono::steady_clock::now();
  server_->stop();
  waits.join();
  EXPECT_LT(std::chrono::steady_clock::now() - start, std::chrono::seconds(4)) << "five are waited otherwise";
}

TEST_F(Weighing, RefusesWhatIsNoNumber) {
  EXPECT_EQ(code_of(client_->Get("/api/v1/scale?after=x")), "bad_request");
  EXPECT_EQ(client_->Get("/api/v1/scale?since=1")->status, 400);
}

TEST_F(Running, WithoutAScaleSaysSoAtOnce) {
  EXPECT_EQ(Json::parse(client_->Get("/api/v1/scale?after=0")->body)["state"], "none");
}

}  // namespace
}  // namespace strandline::server
