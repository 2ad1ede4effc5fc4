#include <gtest/gtest.h>

#include <filesystem>
#include <sstream>

#include "run_helper.h"
#include "src/print/swatch.h"
#include "src/print/table.h"
#include "src/print/text.h"
#include "src/print/timeline.h"
#include "strandline/wire/json.h"

namespace strandline::cli {
namespace {

TEST(Text, CountsCharactersNotBytesOrColours) {
  EXPECT_EQ(width("ä–ö"), 3u);
  EXPECT_EQ(width("\x1b[48;2;1;2;3m   \x1b[0m"), 3u);
  EXPECT_EQ(padded("ä", 3), "ä  ");
  EXPECT_EQ(padded("ä", 3, true), "  ä");
}

TEST(Text, LetsNoDocumentWriteToTheTerminal) {
  EXPECT_EQ(printable("a\x1b[2Jb\xC2\x9B"
                      "c\n"),
            "a<U+001B>[2Jb<U+009B>c<U+000A>");
  EXPECT_EQ(printable("a\x9B[2J\xE2\x82"), "a<0x9B>[2J<0xE2><0x82>") << "file names need not be UTF-8";
}

TEST(Text, ShowsWhatTurnsOrHidesText) {
  EXPECT_EQ(printable("Ann\u202Ea \u2066b\u2069 c\u200F\u061C\u200B\uFEFF\u2028"),
            "Ann<U+202E>a <U+2066>b<U+2069> c<U+200F><U+061C><U+200B><U+FEFF><U+2028>");
  // Letters of every script, marks and the joiners that some need to be written stay as they are.
  const std::string names = "Zoë נועה علی می\u200Cخواهم 👩\u200D🎨 – ½";
  EXPECT_EQ(printable(names), names);
}

TEST(Text, WritesNumbersWithoutNoise) {
  EXPECT_EQ(number(30.0), "30");
  EXPECT_EQ(number(-0.01), "0");
  EXPECT_EQ(signed_number(0.25, 2), "+0.25");
  EXPECT_EQ(minutes(95.4), "1:35");
  EXPECT_EQ(percent(0.873), "87 %");
}

TEST(Table, AlignsBothWays) {
  Table table({"a", ">grams"});
  table.row({"long cell", "3"});
  std::ostringstream out;
  table.print(out);
  EXPECT_EQ(out.str(), "  a           grams\n  long cell       3\n");
}

TEST(Swatch, NamesTwoTonesTheLeadingOneFirst) {
  EXPECT_EQ(named(4, Tone::violet, Tone::ash), "4 violet-ash");
  EXPECT_EQ(named(5.3, Tone::gold), "5.3 gold");
}

TEST(Cautions, StandBeforeTheBowlsInEveryCommandThatGivesAMix) {
  const auto before = [](const std::vector<std::string>& arguments, const std::string& visit, const char* mix) {
    const Ran r = ran(arguments, visit);
    EXPECT_EQ(r.code, 0) << arguments[0] << r.err;
    const size_t caution = r.out.find("Not on anyone under 16");
    const size_t bowl = r.out.find(mix);
    EXPECT_NE(caution, std::string::npos) << arguments[0];
    EXPECT_NE(bowl, std::string::npos) << arguments[0] << r.out;
    EXPECT_LT(caution, bowl) << arguments[0];
    EXPECT_NE(r.out.find("can cause lasting asthma"), std::string::npos);
    EXPECT_NE(r.out.find("such a tattoo raises the risk even without a reaction"), std::string::npos) << r.out;
  };
  const std::string own = quick_demo("my_own_bowls"), first = quick_demo("two_levels_lighter");
  before({"formulate", "-"}, first, "Bowl A");
  before({"plan", "-"}, first, "Bowl A");
  before({"review", "-"}, own, "Bowl A");
  before({"convert", "-", "--range", "demi"}, own, "owl A");
  before({"substitute", "-", "--product", "permanent-6-gold"}, own, "owl A");
}

TEST(Swatch, PaintsOnlyWhereTheTerminalCan) {
  const wire::UnderLights brown{{"#6b4a35", false}, {"#6b4a36", true}, {"#000000", false}, {"#ffffff", false}};
  EXPECT_EQ(swatch(brown, {"daylight", false}), "#6b4a35 ");
  EXPECT_EQ(swatch(brown, {"evening", false}), "#6b4a36*");
  EXPECT_EQ(swatch(brown, {"daylight", true}), "\x1b[48;2;107;74;53m      \x1b[0m ");
}

TEST(Timeline, DrawsHandsAndDevelopment) {
  Timeline t;
  t.tasks = {{"apply:a", TaskKind::apply, "colourist", "A", 1, "a", "top/regrowth", 5, 20, 5, 5, "whitest_first", ""}};
  t.developments = {{"a", "top/regrowth", "A", 5, 20, 45, 55, 65, 56}};
  t.basin_min = 56;
  t.finish_min = 72;
  std::ostringstream out;
  print_timeline(t, out);
  EXPECT_NE(out.str().find("│     AAAAAAAAAAAAAAA"), std::string::npos) << out.str();
  EXPECT_NE(out.str().find("▒░"), std::string::npos);
  EXPECT_NE(out.str().find("whitest first"), std::string::npos);
  EXPECT_NE(out.str().find("finished 1:12"), std::string::npos);
}

TEST(Commands, AssessPrintsEveryZoneAndTheCautionsComeWithBowls) {
  const Ran today = ran({"assess", demo("salt_and_pepper_two_tones")});
  ASSERT_EQ(today.code, done) << today.err;
  EXPECT_NE(today.out.find("crown/regrowth"), std::string::npos);
  EXPECT_NE(today.out.find("60 % white"), std::string::npos);
  const Ran bowls = ran({"predict", demo("my_own_bowls")});
  ASSERT_EQ(bowls.code, done) << bowls.err;
  EXPECT_NE(bowls.out.find("allergic"), std::string::npos);
  EXPECT_NE(bowls.out.find("Skin test"), std::string::npos);
}

TEST(Commands, EveryDemoVisitCanBeAssessed) {
  int visits = 0;
  for (const auto& file : std::filesystem::directory_iterator(STRANDLINE_SOURCE_DIR "/knowledge/demo/visits")) {
    const std::string name = file.path().stem().string();
    ++visits;
    const Ran got = ran({"assess", demo(name), "--json"});
    EXPECT_EQ(got.code, done) << name << got.err;
    EXPECT_EQ((*wire::parse(got.out))["schema"], "strandline.assess/1");
  }
  EXPECT_GE(visits, 13);
}

TEST(Commands, HelpSpeaksOfAFileWhereOneIsRead) {
  for (const char* name : {"serve", "schema", "evidence", "openapi", "version"})
    EXPECT_EQ(ran({name, "--help"}).out.find("FILE is"), std::string::npos) << name;
  for (const char* name : {"assess", "plan", "review"})
    EXPECT_NE(ran({name, "--help"}).out.find("FILE is a visit document"), std::string::npos) << name;
}

TEST(Commands, WrongWordsOnTheCommandLineAreRefused) {
  EXPECT_EQ(ran({"assess"}).code, refused);
  EXPECT_EQ(ran({"fly", "x"}).code, refused);
  EXPECT_EQ(ran({"assess", "x", "--light", "moon"}).code, refused);
  EXPECT_EQ(ran({"--help"}).code, done);
  EXPECT_EQ(ran({"version"}).out.rfind("strandline ", 0), 0u);
}

TEST(Commands, SchemaAndOpenApiAreJson) {
  EXPECT_TRUE(wire::parse(ran({"schema"}).out));
  EXPECT_TRUE(wire::parse(ran({"openapi"}).out));
}

}  // namespace
}  // namespace strandline::cli
