#include "strandline/salon/scale.h"

#include <sys/stat.h>

#include <thread>

#include "line.h"

namespace strandline::salon {
namespace {

using std::chrono::milliseconds;
using std::chrono::seconds;

TEST(Scale, HearsWhatALineSendsByItself) {
  Line line;
  auto scale = Scale::open(line.name, ScaleForm::sent).value();
  line.say("      12.5 g ?\r\n      12.5 g   \r\n");
  const auto heard = scale.wait(seconds(20)).value();
  ASSERT_FALSE(heard.empty());
  EXPECT_EQ(heard.front(), (ScaleReading{12.5, ScaleState::moving}));
}

TEST(Scale, PutsALineTogetherThatComesInParts) {
  Line line;
  auto scale = Scale::open(line.name, ScaleForm::sent).value();
  line.say("      3");
  EXPECT_TRUE(scale.wait(milliseconds(20)).value().empty());
  line.say("0.0 g\r\n");
  EXPECT_EQ(scale.wait(seconds(20)).value(), (std::vector<ScaleReading>{{30, ScaleState::stable}}));
}

TEST(Scale, AsksAScaleThatWaitsForIt) {
  Line line;
  auto scale = Scale::open(line.name, ScaleForm::asked).value();
  std::jthread counter([&] {
    EXPECT_EQ(line.hear(kAskWeight.size()), kAskWeight);
    line.say("SI          8.5 g  \r\n");
  });
  EXPECT_EQ(scale.wait(seconds(20)).value(), (std::vector<ScaleReading>{{8.5, ScaleState::stable}}));
}

TEST(Scale, SaysWhenItIsGone) {
  Line line;
  auto scale = Scale::open(line.name, ScaleForm::sent).value();
  line.hang_up();
  const auto heard = scale.wait(seconds(20));
  ASSERT_FALSE(heard);
  EXPECT_EQ(heard.error().front().code, "scale_gone");
}

TEST(Scale, RefusesWhatIsNoLine) {
  EXPECT_EQ(Scale::open("/dev/null", ScaleForm::sent).error().front().code, "cannot_read");
  EXPECT_EQ(Scale::open("/nowhere", ScaleForm::usb).error().front().code, "cannot_read");
  Line line;
  EXPECT_EQ(Scale::open(line.name, ScaleForm::sent, 1234).error().front().code, "unknown_baud");
}

// A pipe gives reports as a raw HID node does: one write, one read.
TEST(Scale, ReadsReportsOfAUsbScale) {
  char folder[] = "/tmp/strandline-scale-XXXXXX";
  ASSERT_NE(mkdtemp(folder), nullptr);
  const std::string path = std::string(folder) + "/hid";
  ASSERT_EQ(mkfifo(path.c_str(), 0600), 0);
  auto scale = Scale::open(path, ScaleForm::usb).value();
  const int end = open(path.c_str(), O_WRONLY);
  const unsigned char report[] = {3, 4, 2, 0xff, 0x7d, 0};
  EXPECT_EQ(write(end, report, sizeof report), 6);
  EXPECT_EQ(scale.wait(seconds(20)).value(), (std::vector<ScaleReading>{{12.5, ScaleState::stable}}));
  close(end);
  unlink(path.c_str());
  rmdir(folder);
}

}  // namespace
}  // namespace strandline::salon
