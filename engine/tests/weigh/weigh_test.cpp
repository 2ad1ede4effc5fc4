// Frames of public descriptions: the USB HID Point of Sale usage tables 1.02 with two published examples of real
// devices, and the published frame formats of general laboratory and counter balances.
#include "strandline/weigh.h"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

namespace strandline {
namespace {

using Bytes = std::vector<std::uint8_t>;

TEST(UsbScale, ReadsPublishedReports) {
  // "20 grams: XX 02 00 14 00", "645.2 ounces: XX 0B FF 34 19".
  EXPECT_EQ(read_usb_report(Bytes{4, 0x02, 0x00, 0x14, 0x00}), (ScaleReading{20, ScaleState::stable}));
  const auto ounces = read_usb_report(Bytes{3, 4, 0x0b, 0xff, 0x34, 0x19}).value();
  EXPECT_NEAR(ounces.grams, 645.2 * 28.349523125, 1e-6);
  EXPECT_EQ(ounces.state, ScaleState::stable);
}

TEST(UsbScale, TellsWhatIsNoWeightToBook) {
  EXPECT_EQ(read_usb_report(Bytes{3, 3, 2, 0xff, 0x7d, 0}), (ScaleReading{12.5, ScaleState::moving}));
  EXPECT_EQ(read_usb_report(Bytes{3, 2, 2, 0, 0, 0}), (ScaleReading{0, ScaleState::stable}));
  EXPECT_EQ(read_usb_report(Bytes{3, 5, 2, 0, 9, 0})->state, ScaleState::below_zero);
  EXPECT_EQ(read_usb_report(Bytes{3, 6, 2, 0, 9, 0})->state, ScaleState::overload);
  EXPECT_EQ(read_usb_report(Bytes{3, 1, 2, 0, 9, 0})->state, ScaleState::fault);
  EXPECT_FALSE(read_usb_report(Bytes{3, 4, 5, 0, 9, 0}));   // a unit that weighs differently from place to place
  EXPECT_FALSE(read_usb_report(Bytes{3, 99, 2, 0, 9, 0}));  // no status of the tables
  EXPECT_FALSE(read_usb_report(Bytes{1, 2, 3}));
  EXPECT_FALSE(read_usb_report(Bytes{}));
}

TEST(SerialScale, ReadsLinesSentByThemselves) {
  EXPECT_EQ(read_scale_line("    192.21 g   "), (ScaleReading{192.21, ScaleState::stable}));
  EXPECT_EQ(read_scale_line("       0.01 g ?"), (ScaleReading{0.01, ScaleState::moving}));
  EXPECT_EQ(read_scale_line("        311 g ?"), (ScaleReading{311, ScaleState::moving}));
  EXPECT_EQ(read_scale_line("       0.211 kg ?")->state, ScaleState::moving);
  EXPECT_NEAR(read_scale_line("      0.4500 oz     ")->grams, 0.45 * 28.349523125, 1e-9);
  EXPECT_EQ(read_scale_line("    207.80 g    TOTAL"), (ScaleReading{207.8, ScaleState::stable}));
  EXPECT_FALSE(read_scale_line("          3 PCS  ?"));
}

TEST(SerialScale, ReadsAnswers) {
  EXPECT_EQ(read_scale_line("S     -      8.5 g  "), (ScaleReading{-8.5, ScaleState::stable}));
  const auto moving = read_scale_line("SI ?        18.5 kg ").value();
  EXPECT_DOUBLE_EQ(moving.grams, 18500);
  EXPECT_EQ(moving.state, ScaleState::moving);
  EXPECT_EQ(read_scale_line("S ^")->state, ScaleState::overload);
  EXPECT_EQ(read_scale_line("S v")->state, ScaleState::below_zero);
  EXPECT_EQ(read_scale_line("S E")->state, ScaleState::fault);
  EXPECT_FALSE(read_scale_line("S A"));  // understood, under way
  EXPECT_FALSE(read_scale_line("SI I"));
  EXPECT_FALSE(read_scale_line("ES"));
}

TEST(SerialScale, TakesNoNoiseForGrams) {
  for (const char* noise :
       {"", " ", "g", "12.5", "12.5 stone", "1.2.3 g", "--5 g", "1e3 g", "inf g", "nan g", "0x10 g", "99999999 g"})
    EXPECT_FALSE(read_scale_line(noise)) << noise;
}

TEST(SerialScale, LongLinesAreDroppedWhole) {
  ScaleLines lines;
  EXPECT_TRUE(lines.take(std::string(500, '1') + " g\r\n").empty());
  EXPECT_EQ(lines.take("  12.5 g\r\n").size(), 1U);
}

RC_GTEST_PROP(SerialScaleLaws, PortionsDoNotMatter, ()) {
  const auto tenths = *rc::gen::container<std::vector<int>>(rc::gen::inRange(0, 30000));
  std::string text;
  for (const int t : tenths) text += "   " + std::to_string(t / 10) + "." + std::to_string(t % 10) + " g\r\n";
  ScaleLines whole, parted;
  const auto expected = whole.take(text);
  RC_ASSERT(expected.size() == tenths.size());
  std::vector<ScaleReading> got;
  for (std::size_t at = 0; at < text.size();) {
    const auto n = *rc::gen::inRange<std::size_t>(1, 9);
    for (const auto& r : parted.take(std::string_view(text).substr(at, n))) got.push_back(r);
    at += n;
  }
  RC_ASSERT(got == expected);
  for (std::size_t i = 0; i < got.size(); ++i) RC_ASSERT(std::abs(got[i].grams - tenths[i] / 10.0) < 1e-9);
}

}  // namespace
}  // namespace strandline
