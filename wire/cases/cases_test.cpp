// Fourteen worked heads: what a good colourist's first answer must hold. What does not hold yet stands in misses.h,
// and may not stand there once it holds.
#include <gtest/gtest.h>

#include <fstream>
#include <sstream>

#include "case.h"
#include "misses.h"
#include "strandline/wire/document.h"

namespace strandline::cases {
namespace {

constexpr int kScenarios = kSearchScenarios;  // as the answer is given

std::string read(const std::string& path) {
  std::ifstream in(path);
  if (!in) throw std::runtime_error("cannot read " + path);
  std::stringstream text;
  text << in.rdbuf();
  return text.str();
}

Visit visit_of(const Case& c) {
  const std::string root = STRANDLINE_SOURCE_DIR;
  const auto document = wire::parse(read(root + "/wire/cases/" + c.document + ".json"));
  const auto shelf = wire::read_shelf(*wire::parse(read(root + "/knowledge/demo/shelf.json")));
  const auto policy = wire::read_policy(*wire::parse(read(root + "/knowledge/policy/house.json")));
  const auto read = wire::read_visit(*document, {[&](const std::string&) { return std::optional(*shelf); },
                                                 [&](const std::string&) { return std::optional(*policy); }});
  if (!read) throw std::runtime_error(wire::print(wire::problems_json(read.error())));
  return read->visit;
}

std::vector<Case> every_case() {
  std::vector<Case> all;
  for (auto part : {deeper_and_even(), lighter_and_toned(), bright_and_white(), repaired()})
    all.insert(all.end(), part.begin(), part.end());
  return all;
}

bool listed(const char* name) {
  return std::find(kMisses.begin(), kMisses.end(), std::string_view(name)) != kMisses.end();
}

void expect_as_listed(const Checks& checks, const Offer& offer) {
  SCOPED_TRACE(offer.describe());
  for (const Check& c : checks) {
    const bool holds = c.holds(offer);
    EXPECT_NE(holds, listed(c.name)) << c.name << (holds ? " holds: take it off the list" : " does not hold");
  }
}

class WorkedHead : public testing::TestWithParam<size_t> {};

void look_at(const Visit& visit, const Checks& checks) {
  ASSERT_TRUE(check(visit).empty());
  FormulateOptions options;
  options.scenarios = kScenarios;
  const auto answer = plan(visit, options);
  ASSERT_TRUE(answer);
  expect_as_listed(checks, Offer(visit, *answer));
}

TEST_P(WorkedHead, IsAnsweredAsAColouristWould) {
  const Case c = every_case()[GetParam()];
  Checks all = c.musts;
  all.insert(all.end(), c.shoulds.begin(), c.shoulds.end());
  look_at(visit_of(c), all);
}

TEST_P(WorkedHead, IsAnsweredOtherwiseWhereOneFactIsOther) {
  const Case c = every_case()[GetParam()];
  Visit visit = visit_of(c);
  c.flip(visit);
  look_at(visit, c.flipped);
}

INSTANTIATE_TEST_SUITE_P(Fourteen, WorkedHead, testing::Range<size_t>(0, 14),
                         [](const auto& p) { return std::string(every_case()[p.param].document).substr(3); });

TEST(Misses, AreChecksThatExist) {
  std::vector<std::string_view> names;
  for (const Case& c : every_case())
    for (const Checks* part : {&c.musts, &c.shoulds, &c.flipped})
      for (const Check& one : *part) names.emplace_back(one.name);
  for (std::string_view miss : kMisses) EXPECT_NE(std::find(names.begin(), names.end(), miss), names.end()) << miss;
}

}  // namespace
}  // namespace strandline::cases
