#include <gtest/gtest.h>

#include <cstdio>
#include <fstream>

#include "engine/src/evidence/card_trial.h"
#include "run_helper.h"

namespace strandline::cli {
namespace {

std::string temporary(const std::string& name) { return testing::TempDir() + "strandline-measure-" + name; }

void write(const std::string& file, const std::string& text) { std::ofstream(file, std::ios::binary) << text; }

std::string ppm(const card::Picture& p) {
  return "P6\n# a card\n" + std::to_string(p.width) + " " + std::to_string(p.height) + "\n255\n" +
         std::string(p.rgb.begin(), p.rgb.end());
}

std::string table(const std::vector<measured::Sample>& samples) {
  std::string out = "name\tL*\ta*\tb*\n";
  for (const auto& s : samples)
    out += s.name + "\t" + std::to_string(s.lab.l) + "\t" + std::to_string(s.lab.a) + "\t" + std::to_string(s.lab.b) +
           "\n";
  return out;
}

TEST(MeasurePhoto, TellsTheColourByAMeasuredCardAndOnlyNeighboursWithout) {
  const CardTrial card = card_trial(5, 2, truth::Lamp::daylight);
  const std::string photo = temporary("photo.ppm"), patches = temporary("card.tsv");
  write(photo, ppm(picture_of(card, {.turn_degrees = 8, .tilt_x = 10, .fills = 0.85}, 800, 600)));
  write(patches, table(card.references));
  const Ran with = ran({"measure", "photo", photo, "--card", patches, "--json"});
  ASSERT_EQ(with.code, done) << with.err;
  const wire::Json answer = *wire::parse(with.out);
  EXPECT_NEAR(answer["lab"]["l"].get<double>(), card.truth.l, 4);
  EXPECT_GT(answer["error"].get<double>(), 0);
  EXPECT_FALSE(answer["by_spectra"].get<bool>());
  const Ran without = ran({"measure", "photo", photo});
  ASSERT_EQ(without.code, done) << without.err;
  EXPECT_NE(without.out.find("Nobody measured this card"), std::string::npos);
  EXPECT_EQ(without.out.find("L*"), std::string::npos);
  std::remove(photo.c_str()), std::remove(patches.c_str());
}

TEST(MeasurePhoto, RefusesWhatIsNoPhotoOfTheCard) {
  const Ran text = ran({"measure", "photo", "-"}, "hello");
  EXPECT_EQ(text.code, refused);
  EXPECT_NE(text.err.find("no photo"), std::string::npos);
  const Ran grey = ran({"measure", "photo", "-"}, ppm({400, 400, std::vector<std::uint8_t>(3 * 400 * 400, 90)}));
  EXPECT_EQ(grey.code, refused);
  EXPECT_NE(grey.err.find("corner marks"), std::string::npos);
  EXPECT_EQ(ran({"measure", "photo", "/nowhere.jpg"}).code, failed);
  EXPECT_NE(ran({"measure"}).code, done);
}

TEST(MeasurePhoto, PrintsTheCard) {
  const Ran card = ran({"measure", "card"});
  EXPECT_EQ(card.code, done);
  EXPECT_EQ(card.out, card::svg());
  // The app has it as a file.
  std::ifstream file(STRANDLINE_SOURCE_DIR "/web/public/card.svg");
  EXPECT_EQ(card.out, std::string(std::istreambuf_iterator<char>(file), {}));
}

}  // namespace
}  // namespace strandline::cli
