// Limits of Regulation (EC) 1223/2009 Annex III, list state as amended by Regulation (EU) 2024/996.
#include <gtest/gtest.h>

#include "strandline/law.h"

namespace strandline::law {
namespace {

LimitResult checked(const std::string& entry, double percent, const std::string& basis, Use use) {
  const Composition mix{
      {"ready", 10, 0.0, {{"", entry, entry == "8" || entry == "9" ? "one dye" : "", percent, basis}}, true}};
  return check_limits(mix, use).value().entries.at(0);
}

TEST(Annex3, CommonOxidativeDyes) {
  struct Row {
    const char *entry, *basis;
    double cap;
  };
  for (const Row& row : {Row{"8", "free_base", 3},      Row{"8a", "free_base", 2},
                         Row{"9", "free_base", 5},      Row{"9a", "free_base", 2},
                         Row{"9a", "sulfate", 3.6},     Row{"16", "", 2},
                         Row{"22", "", 1.25},           Row{"243", "", 1.8},
                         Row{"217", "", 1.2},           Row{"272", "", 0.9},
                         Row{"241", "", 1.5},           Row{"242", "hydrochloride", 2},
                         Row{"198", "sulfate", 2.5},    Row{"273", "", 3},
                         Row{"203", "free_base", 0.68}, Row{"203", "dihydrochloride", 1},
                         Row{"292", "free_base", 1.8},  Row{"226", "tetrahydrochloride", 1.8},
                         Row{"276", "", 0.5},           Row{"285", "", 0.15}}) {
    EXPECT_EQ(checked(row.entry, row.cap, row.basis, Use::oxidative_dye).status, Status::within) << row.entry;
    EXPECT_EQ(checked(row.entry, row.cap * 1.001, row.basis, Use::oxidative_dye).status, Status::over) << row.entry;
    EXPECT_EQ(checked(row.entry, row.cap, row.basis, Use::oxidative_dye).cap, row.cap) << row.entry;
  }
}

TEST(Annex3, DirectDyesHaveTheirOwnLimits) {
  EXPECT_EQ(checked("276", 1.0, "", Use::non_oxidative_dye).status, Status::within);
  EXPECT_EQ(checked("276", 1.01, "", Use::non_oxidative_dye).status, Status::over);
  EXPECT_EQ(checked("247", 2.8, "", Use::non_oxidative_dye).status, Status::within);
  EXPECT_EQ(checked("247", 0.1, "", Use::oxidative_dye).status, Status::not_permitted_use);
  EXPECT_EQ(checked("8a", 0.1, "free_base", Use::non_oxidative_dye).status, Status::not_permitted_use);
  EXPECT_TRUE(checked("247", 1, "", Use::non_oxidative_dye).nitrosamine_conditions);
}

TEST(Annex3, PeroxideAndAmmonia) {
  const auto peroxide = [](double percent, Use use) {
    return check_limits({{"ready", 1, percent, {}, true}}, use).value().entries.at(0).status;
  };
  EXPECT_EQ(peroxide(12, Use::oxidative_dye), Status::within);
  EXPECT_EQ(peroxide(12.01, Use::lightener), Status::over);
  EXPECT_EQ(peroxide(4.01, Use::skin), Status::over);
  EXPECT_EQ(checked("4", 6, "NH3", Use::oxidative_dye).status, Status::within);
  EXPECT_EQ(checked("4", 6.1, "NH3", Use::oxidative_dye).status, Status::over);
  EXPECT_EQ(checked("99", 0.68, "SO2", Use::oxidative_dye).status, Status::over);
  EXPECT_EQ(checked("2a", 9, "thioglycolic_acid", Use::waving_general).status, Status::over);
  EXPECT_EQ(checked("2a", 9, "thioglycolic_acid", Use::waving_professional).status, Status::within);
}

// Annex III, entries 212 and 213 together: at most 2.0 % counted as 2-methyl-1-naphthol.
TEST(Annex3, NaphtholPair) {
  const auto pair = [](double acetoxy, double naphthol) {
    const Composition mix{
        {"ready", 1, 3.0, {{"5697-02-9", "", "", acetoxy, ""}, {"7469-77-4", "", "", naphthol, ""}}, true}};
    return check_limits(mix, Use::oxidative_dye).value();
  };
  EXPECT_EQ(pair(1.0, 1.0).overall, Status::within);
  EXPECT_NEAR(pair(1.0, 1.0).sums.at(0).total.value(), 1 + 158.20 / 200.23, 1e-4);
  EXPECT_EQ(pair(1.5, 1.5).overall, Status::over);
  EXPECT_EQ(pair(1.5, 1.5).entries.at(1).status, Status::within);
}

TEST(Annex3, WholeTableIsEmbedded) {
  // 124 hair dye entries; each has a limit for at least one of the two uses.
  const char* entries[] = {
      "8",   "8a",  "8c",  "9",   "9a",  "9b",  "16",  "22",  "189", "190", "191", "192", "193", "195", "198", "199",
      "200", "201", "203", "204", "206", "207", "208", "209", "210", "211", "212", "213", "214", "215", "216", "217",
      "218", "219", "220", "221", "222", "223", "224", "225", "226", "227", "228", "229", "230", "231", "232", "233",
      "234", "235", "236", "237", "238", "239", "240", "241", "242", "243", "244", "245", "246", "247", "248", "249",
      "250", "251", "252", "253", "254", "255", "256", "258", "259", "260", "261", "262", "263", "264", "265", "266",
      "267", "268", "269", "270", "271", "272", "273", "274", "275", "276", "277", "278", "279", "280", "281", "282",
      "283", "284", "285", "288", "289", "290", "291", "292", "293", "294", "295", "296", "298", "299", "300", "301",
      "302", "303", "304", "305", "315", "316", "317", "318", "319", "320", "322", "326"};
  EXPECT_EQ(std::size(entries), 124u);
  for (const auto* entry : entries) {
    const bool oxidative = checked(entry, 0.0, "", Use::oxidative_dye).status == Status::within;
    const bool direct = checked(entry, 0.0, "", Use::non_oxidative_dye).status == Status::within;
    EXPECT_TRUE(oxidative || direct) << entry;
  }
}

}  // namespace
}  // namespace strandline::law
