// Worked rows of peroxide strength, dilution, on-head numbers and salts. Source of each group beside it.
#include <gtest/gtest.h>

#include "strandline/law.h"

namespace strandline::law {
namespace {

// 2 H2O2 -> 2 H2O + O2 with M = 34.014 g/mol and molar volumes 22.414 / 22.711 L (CODATA); the trade's own
// values are common practice.
TEST(PublishedPeroxide, VolumesToPercent) {
  struct Row {
    double volumes, atm, bar, mol_per_litre, trade;
  };
  for (const Row& row : {Row{10, 3.035, 2.995, 0.892, 3}, Row{20, 6.070, 5.991, 1.785, 6},
                         Row{30, 9.105, 8.986, 2.677, 9}, Row{40, 12.14, 11.98, 3.569, 12}}) {
    const double atm = volume_to_percent_wv(row.volumes, GasState::one_atm).value();
    const double bar = volume_to_percent_wv(row.volumes, GasState::one_bar).value();
    EXPECT_NEAR(atm, row.atm, row.volumes == 40 ? 5e-3 : 5.1e-4);
    EXPECT_NEAR(bar, row.bar, row.volumes == 40 ? 5e-3 : 5.1e-4);
    EXPECT_NEAR(atm * 10 / 34.014, row.mol_per_litre, 5.1e-4);
    EXPECT_NEAR(row.volumes, 11.2 * row.mol_per_litre, 0.03);  // vol = 11.2 × molarity at 1 atm
    EXPECT_NEAR(trade_percent(row.volumes).value(), row.trade, 1e-12);
    EXPECT_NEAR(bar / row.trade, 1, 0.002);
    EXPECT_NEAR(percent_wv_to_volume(atm, GasState::one_atm).value(), row.volumes, 1e-9);
  }
  // One third of the volumes is a common error: 20 volumes are not 6.67 %.
  EXPECT_GT(20.0 / 3 - volume_to_percent_wv(20, GasState::one_atm).value(), 0.5);
}

// Densities at 20 degrees C of the weight strengths (a value from memory).
TEST(PublishedPeroxide, WeightStrengthsInVolumes) {
  struct Row {
    double ww, density, wv, volumes;
  };
  for (const Row& row : {Row{3, 1.0094, 3.03, 9.98}, Row{6, 1.0204, 6.12, 20.2}, Row{9, 1.0314, 9.28, 30.6},
                         Row{12, 1.0425, 12.51, 41.2}}) {
    const double wv = percent_wv_from_ww(row.ww, row.density).value();
    EXPECT_NEAR(wv, row.wv, 5.1e-3);
    EXPECT_NEAR(percent_wv_to_volume(wv, GasState::one_atm).value(), row.volumes, 0.05);
  }
  // British Pharmacopoeia: 6 % made from 35 % w/w at 15 % v/v (density near 1.13 g/mL, from memory).
  EXPECT_NEAR(percent_wv_from_ww(35, 1.13).value() * 0.15, 5.93, 5e-3);
}

// C1·V1 = C2·V2, as taught for developers.
TEST(PublishedMixing, Dilution) {
  EXPECT_NEAR(dilute(12, 6, 2)->concentrate, 1, 1e-12);  // equal parts
  EXPECT_NEAR(dilute(12, 6, 2)->diluent, 1, 1e-12);
  EXPECT_NEAR(dilute(12, 9, 90)->concentrate, 67.5, 1e-12);
  EXPECT_NEAR(dilute(12, 9, 90)->diluent, 22.5, 1e-12);
  EXPECT_NEAR(dilute(12, 3, 4)->concentrate, 1, 1e-12);  // 1 part + 3 parts
  EXPECT_NEAR(dilute(12, 3, 4)->diluent, 3, 1e-12);
}

// A licence-examination type of question, and alligation.
TEST(PublishedMixing, BlendAndAlligation) {
  EXPECT_NEAR(blend({{1, 50}, {1, 20}, {1, 20}}).value(), 30, 1e-12);
  const auto parts = alligate(10, 40, 20).value();
  EXPECT_NEAR(parts.weaker_parts, 20, 1e-12);
  EXPECT_NEAR(parts.stronger_parts, 10, 1e-12);
  EXPECT_NEAR(parts.weaker_parts / parts.stronger_parts, 2, 1e-12);
}

TEST(PublishedMixing, OnHeadPeroxide) {
  const auto mixed = [](double percent, double developer_parts) {
    return on_head_peroxide({{"colour", 1, 0.0, {}, true}, {"developer", developer_parts, percent, {}, true}})
        .value()
        .value();
  };
  EXPECT_NEAR(mixed(12, 1), 6.0, 1e-12);
  EXPECT_NEAR(mixed(12, 1.5), 7.2, 1e-12);
  EXPECT_NEAR(mixed(12, 2), 8.0, 1e-12);
  EXPECT_NEAR(mixed(6, 2), 4.0, 1e-12);
}

TEST(PublishedMixing, SplitAndScale) {
  const auto grams = split_by_ratio(100, {1, 1.5}).value();
  EXPECT_NEAR(grams[0], 40, 1e-12);
  EXPECT_NEAR(grams[1], 60, 1e-12);
  EXPECT_NEAR(scale_to_weighed(grams, 0, 41.3).value()[1], 62.0, 0.051);
}

Composition one_dye(Declared dye, double developer_parts) {
  return {{"colour", 1, 0.0, {std::move(dye)}, true}, {"developer", developer_parts, 6.0, {}, true}};
}

const LimitResult& row(const LimitReport& report, const std::string& entry) {
  for (const auto& result : report.entries)
    if (result.entry == entry) return result;
  throw std::out_of_range("no row for entry " + entry);
}

TEST(PublishedLimits, DyeOnTheHead) {
  const auto report = check_limits(one_dye({"16245-77-5", "", "", 3.0, ""}, 1.5), Use::oxidative_dye).value();
  const auto& ppd = row(report, "8a");
  EXPECT_NEAR(ppd.on_head_percent.value(), 0.63, 5e-3);  // 1.2 % of the salt
  EXPECT_EQ(ppd.as, "free_base");
  EXPECT_EQ(ppd.cap, 2.0);
  EXPECT_EQ(ppd.status, Status::within);
}

TEST(PublishedLimits, SumOfRatios) {
  Composition mix{
      {"ready", 1, 3.0, {{"95-70-5", "", "", 1.0, ""}, {"", "9", "an entry 9 dye", 2.0, "free_base"}}, true}};
  const auto report = check_limits(mix, Use::oxidative_dye).value();
  ASSERT_EQ(report.sums.size(), 1u);
  EXPECT_NEAR(report.sums[0].total.value(), 0.90, 1e-12);
  EXPECT_EQ(report.sums[0].status, Status::within);
  EXPECT_EQ(report.overall, Status::within);
}

// Molar masses from standard atomic masses; the last column is what the list itself pairs.
TEST(PublishedSalts, FactorsToTheBase) {
  struct Row {
    const char *entry, *form;
    double factor;
  };
  for (const Row& row :
       {Row{"8a", "dihydrochloride", 0.5973}, Row{"8a", "sulfate", 0.5244}, Row{"9a", "sulfate", 0.5547},
        Row{"292", "sulfate", 0.6081}, Row{"203", "dihydrochloride", 0.6775}, Row{"226", "tetrahydrochloride", 0.6641},
        Row{"242", "hydrochloride", 0.6976}, Row{"273", "sulfate", 0.5918}, Row{"217", "hydrochloride", 0.7496},
        Row{"217", "sulfate", 0.6900}})
    EXPECT_NEAR(reference_per_gram(row.entry, row.form).value(), row.factor, 5.1e-5) << row.entry << ' ' << row.form;
  EXPECT_NEAR(3.6 * *reference_per_gram("9a", "sulfate"), 1.997, 5e-4);
  EXPECT_NEAR(1.0 * *reference_per_gram("203", "dihydrochloride"), 0.68, 5e-3);
  EXPECT_NEAR(1.8 * *reference_per_gram("226", "tetrahydrochloride"), 1.195, 5.1e-4);
}

}  // namespace
}  // namespace strandline::law
