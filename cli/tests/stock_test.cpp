// Shelves and stock from the command line, on a salon file.
#include <gtest/gtest.h>

#include <filesystem>

#include "run_helper.h"
#include "strandline/salon/world.h"

namespace strandline::cli {
namespace {

class OnASalonFile : public testing::Test {
 protected:
  void SetUp() override {
    std::string pattern = (std::filesystem::temp_directory_path() / "strandline-stock-XXXXXX").string();
    ASSERT_NE(mkdtemp(pattern.data()), nullptr);
    folder_ = pattern;
    db_ = folder_ / "salon.sqlite";
    ASSERT_TRUE(salon::make_salon(db_, [](salon::World&) { return Result<void>(); }));
  }
  void TearDown() override { std::filesystem::remove_all(folder_); }
  Ran command(std::vector<std::string> words, const std::string& typed = "") const {
    words.insert(words.end(), {"--db", db_});
    return ran(words, typed);
  }
  std::string file(const std::string& name, const std::string& text) const {
    std::ofstream(folder_ / name) << text;
    return folder_ / name;
  }

  std::filesystem::path folder_;
  std::string db_;
};

TEST_F(OnASalonFile, AShelfIsImportedShownAndExported) {
  const std::string whole = file("ours.json", R"({"title": "Ours", "ranges": [{"id": "tint", "maker": "m",
      "name": "Tint", "cls": "permanent"}], "products": []})");
  const Ran made = command({"shelf", "import", whole, "--into", "ours"});
  ASSERT_EQ(made.code, done) << made.err;
  const std::string list = file("list.csv", "code;name\nK7;7 copper\nX1;moonlight\n");
  const Ran preview = command({"shelf", "import", list, "--into", "ours", "--range", "tint"});
  EXPECT_NE(preview.out.find("1 understood, 1 not."), std::string::npos) << preview.out;
  EXPECT_NE(preview.out.find("Nothing was kept"), std::string::npos);
  EXPECT_EQ(command({"shelf", "show", "ours"}).out.find("K7"), std::string::npos);
  EXPECT_EQ(command({"shelf", "import", list, "--into", "ours", "--range", "tint", "--package", "60", "--yes"}).code,
            done);
  const Ran shown = command({"shelf", "show", "ours"});
  EXPECT_NE(shown.out.find("K7  7 copper"), std::string::npos) << shown.out;
  EXPECT_NE(command({"shelf", "export", "ours", "--csv", "--range", "tint"}).out.find("K7,7 copper"),
            std::string::npos);
  const Ran out = command({"shelf", "export", "ours"});
  const auto document = wire::parse(out.out);
  ASSERT_TRUE(document);
  EXPECT_EQ((*document)["products"][0]["package_g"], 60);
  // The same again is the next version of it.
  EXPECT_EQ(command({"shelf", "import", file("again.json", out.out), "--into", "ours"}).code, done);
  EXPECT_NE(command({"shelf", "list"}).out.find("version 3"), std::string::npos);
  EXPECT_EQ(command({"shelf", "show", "none"}).code, refused);
  EXPECT_EQ(command({"shelf", "import", file("bad.json", "{"), "--into", "ours"}).code, refused);
  EXPECT_EQ(command({"shelf", "import", (folder_ / "missing.csv").string(), "--into", "ours"}).code, failed);
}

TEST_F(OnASalonFile, SwatchesFillALine) {
  const std::string whole = file("ours.json", R"({"title": "Ours", "ranges": [{"id": "tint", "maker": "m",
      "name": "Tint", "cls": "permanent", "ratios": [1], "developer_percents": [6],
      "minutes": {"min": 30, "target": 35, "max": 40}}], "products": [
      {"id": "a", "range": "tint", "code": "X1", "cls": "permanent", "level": 6, "tone": "natural", "package_g": 60},
      {"id": "b", "range": "tint", "code": "X2", "cls": "permanent", "level": 7, "tone": "natural", "package_g": 60}]})");
  ASSERT_EQ(command({"shelf", "import", whole, "--into", "ours"}).code, done);
  const std::string swatches = file("swatches.txt", "name;L*;a*;b*\nx1;38;6;12\nnobody;40;1;1\n");
  const std::vector<std::string> words = {"shelf", "swatches", swatches, "--into", "ours", "--range", "tint"};
  const Ran preview = command(words);
  ASSERT_EQ(preview.code, done) << preview.err;
  EXPECT_NE(preview.out.find("Understood: a\n"), std::string::npos) << preview.out;
  EXPECT_NE(preview.out.find("called so: nobody"), std::string::npos);
  EXPECT_EQ(command({"shelf", "export", "ours"}).out.find("\"swatch\""), std::string::npos);
  std::vector<std::string> keep = words;
  keep.emplace_back("--yes");
  EXPECT_EQ(command(keep).code, done);
  EXPECT_NE(command({"shelf", "export", "ours"}).out.find("\"swatch\""), std::string::npos);
  EXPECT_EQ(command({"shelf", "swatches", swatches, "--into", "ours", "--range", "none"}).code, refused);
}

TEST_F(OnASalonFile, StockIsReceivedCountedThrownAwayAndUndone) {
  const std::string product = "permanent-7-natural";
  EXPECT_NE(command({"stock", "list"}).out.find("(permanent-7-natural)  not counted"), std::string::npos);
  const Ran came =
      command({"stock", "receive", product, "120", "--batch", "L1", "--expires", "2031-05-01", "--paid", "18"});
  ASSERT_EQ(came.code, done) << came.err;
  EXPECT_NE(came.out.find("120.0 g  batch L1, due 2031-05-01"), std::string::npos) << came.out;
  EXPECT_EQ(command({"stock", "count", product, "110"}).code, done);
  const Ran thrown = command({"stock", "waste", product, "10"});
  EXPECT_NE(thrown.out.find("100.0 g"), std::string::npos) << thrown.out;
  const Ran much = command({"stock", "waste", product, "101"});
  EXPECT_EQ(much.code, refused);
  EXPECT_NE(much.err.find("Only 100.0 g are there."), std::string::npos) << much.err;
  EXPECT_EQ(command({"stock", "write-off", product, "5"}).code, refused);  // why?
  const std::string id =
      thrown.out.substr(thrown.out.find("Kept as ") + 8, thrown.out.rfind('\n') - thrown.out.find("Kept as ") - 8);
  const Ran back = command({"stock", "undo", id});
  EXPECT_NE(back.out.find("110.0 g"), std::string::npos) << back.out << back.err;
  EXPECT_EQ(command({"stock", "undo", id}).code, refused);
  EXPECT_EQ(command({"stock", "receive", "nothing", "5"}).code, refused);
  EXPECT_NE(command({"stock", "moves"}).out.find("waste  permanent-7-natural  10.0 g  undone"), std::string::npos);
  EXPECT_NE(command({"stock", "list", "--json"}).out.find("\"strandline.stock/1\""), std::string::npos);
  EXPECT_EQ(command({"stock", "list", "--low"}).out, "");
}

}  // namespace
}  // namespace strandline::cli
