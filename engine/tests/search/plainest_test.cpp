// M19: the plainest of all recipes that no reading can tell apart.
#include "engine/tests/formulate/random_trial.h"
#include "search/plainness.h"

namespace strandline {
namespace {

using namespace testing_support;

// A branch that holds this recipe alone.
Branch branch_of(const Ground& g, const Shares& s, int setting) {
  std::vector<std::pair<int, int>> parts;  // eighths, node
  for (int i = 0; i < 3; ++i) {
    if (s.eighths[i] == 0) continue;
    for (int n = 0; n < static_cast<int>(g.tree.nodes.size()); ++n) {
      const ShadeNode& node = g.tree.nodes[static_cast<size_t>(n)];
      if (node.single() && g.tree.order[static_cast<size_t>(node.begin)] == s.product[i])
        parts.emplace_back(s.eighths[i], n);
    }
  }
  std::sort(parts.rbegin(), parts.rend());
  Branch b;
  b.setting = setting;
  for (size_t i = 0; i < parts.size(); ++i)
    b.eighths[i] = static_cast<signed char>(parts[i].first), b.node[i] = parts[i].second;
  return b;
}

// What a branch says of its recipes is never less plain than one of them: divided to the end, no count falls.
TEST(Plainness, OfABranchIsNoMoreThanThatOfItsParts) {
  for (unsigned seed = 1; seed <= 40; ++seed) {
    const Trial trial = random_trial(seed, 2 + static_cast<int>(seed % 8), 1 + static_cast<int>(seed % 3));
    const Prepared p(trial, 1);
    const Ground ground{&p.domain.sets[0], shade_tree(p.domain.sets[0])};
    const PlainGround plain(ground, plain_wish(p.search_zones, {0}));
    for (const auto& one : p.domain.settings) {
      std::vector<Branch> left = undivided(0);
      while (!left.empty()) {
        const Branch b = left.back();
        left.pop_back();
        if (!holds_recipes(ground, b) || single(ground, b)) continue;
        const int part = widest_part(ground, b);
        for (int child : {ground.node(b, part).left, ground.node(b, part).right}) {
          Branch c = b;
          c.node[part] = child;
          if (!holds_recipes(ground, c)) continue;
          ASSERT_GE(plain.least(one.setting, c), plain.least(one.setting, b)) << seed;
          left.push_back(c);
        }
      }
    }
  }
}

struct Plan19 {
  explicit Plan19(const Trial& trial, int scenarios) : p(trial, scenarios) {
    for (size_t z = 0; z < p.search_zones.size(); ++z) all.push_back(static_cast<int>(z));
  }
  ChoiceInput input(const Trial& trial, BowlSearch& search) const {
    ChoiceInput in{trial.head,     trial.shelf,
                   p.policy,       p.domain,
                   p.search_zones, p.draws,
                   p.total_weight, [&](int s, int z, double m) -> const ZoneTable& { return search.table(s, z, m); }};
    in.plainest = [&](const Wish& w, const BowlSearch::Judged& judge) { return search.plainest(w, judge); };
    return in;
  }
  Prepared p;
  std::vector<int> all;
};

// Two independent routes: every recipe of the domain evaluated and the plainest near the best picked, and the search.
TEST(Plainest, IsWhatFullEnumerationPicks) {
  int other = 0, looked = 0;
  for (unsigned seed = 1; seed <= (kSlowed ? 30U : 160U); ++seed) {
    const Trial trial = random_trial(seed, 4 + static_cast<int>(seed % 4), 1 + static_cast<int>(seed % 3 == 1));
    const Plan19 q(trial, 8);
    if (q.p.domain.settings.empty()) continue;
    const FormulateOptions options;
    BowlSearch search(q.p.domain, q.p.search_zones, q.p.draws, q.p.total_weight, q.p.policy, options);
    const ChoiceInput in = q.input(trial, search);
    const MixGrams grams = bowl_wish(in, q.all).grams;
    struct Known {
      Candidate c;
      std::vector<double> by_zone;
    };
    std::vector<Known> every;
    const PlainWish wish = plain_wish(q.p.search_zones, q.all);
    for (size_t k = 0; k < q.p.domain.settings.size(); ++k) {
      const auto& one = q.p.domain.settings[k];
      const bool open = std::all_of(q.all.begin(), q.all.end(), [&](int z) {
        const SearchZone& zone = q.p.search_zones[static_cast<size_t>(z)];
        return forbidden(one.setting, *zone.span, q.p.policy).empty() && !out_of_place(one.setting, zone);
      });
      if (!open) continue;
      const RecipeSet& set = q.p.domain.sets[static_cast<size_t>(one.set)];
      const Ground ground{&set, shade_tree(set)};
      const PlainGround plain(ground, wish);
      for (const Shares& s : set.shares()) {
        Known own{{0, one.set, static_cast<int>(k), s}, {}};
        const double money = poured_price(set, s, one.setting, grams.of(*one.setting.range), trial.shelf, q.p.policy);
        if (!std::isfinite(money)) continue;
        own.c.objective = exact_objective(in, own.c, q.all, nullptr, &own.by_zone) + money;
        own.c.plain = plain.least(one.setting, branch_of(ground, s, static_cast<int>(k)));
        every.push_back(std::move(own));
      }
    }
    if (every.empty()) continue;
    const Known* best = &every[0];
    for (const Known& k : every)
      if (k.c.objective < best->c.objective) best = &k;
    const Known* plainest = nullptr;
    for (const Known& k : every) {
      bool near = k.c.objective <= best->c.objective + q.p.policy.indifference_levels;
      for (size_t z = 0; z < k.by_zone.size(); ++z)
        near = near && k.by_zone[z] <= best->by_zone[z] + q.p.policy.zone_indifference_levels;
      if (near &&
          (!plainest || std::tie(k.c.plain, k.c.objective) < std::tie(plainest->c.plain, plainest->c.objective)))
        plainest = &k;
    }
    Wish one_bowl = bowl_wish(in, q.all);
    one_bowl.keep = kBestKept;
    const Chosen found = plain_bowl(in, one_bowl, exact_list(in, search.best(one_bowl), q.all));
    ++looked;
    other += !same_recipe(plainest->c, best->c);
    EXPECT_NEAR(found.certified.objective, best->c.objective, 1e-6) << seed;
    EXPECT_EQ(found.best.plain, plainest->c.plain) << seed;
    EXPECT_NEAR(found.best.objective, plainest->c.objective, 1e-6) << seed;
    for (size_t i = 1; i + kBestKept < found.list.size(); ++i) EXPECT_GE(found.list[i].plain, found.best.plain) << seed;
  }
  EXPECT_GT(looked, 20);
  EXPECT_GT(other, looked / 4);  // plainness does choose otherwise than the objective; by choice
}

// Whoever does the work, in whatever order: the same formulas in the same order.
TEST(Plainest, DoesNotDependOnThreads) {
  for (unsigned seed : {3U, 4U, 12U}) {
    const Trial trial = random_trial(seed, 14, 2);
    const Plan19 q(trial, 32);
    auto run = [&](const ParallelFor& parallel) {
      FormulateOptions options;
      options.parallel = parallel;
      BowlSearch search(q.p.domain, q.p.search_zones, q.p.draws, q.p.total_weight, q.p.policy, options);
      const ChoiceInput in = q.input(trial, search);
      Wish wish = bowl_wish(in, q.all);
      wish.keep = kBestKept;
      return plain_bowl(in, wish, exact_list(in, search.best(wish), q.all));
    };
    const Chosen serial = run(serial_for);
    const Chosen backwards = run([](int count, const std::function<void(int, int)>& body) {
      for (int i = count; i-- > 0;) body(i, i + 1);
    });
    ASSERT_EQ(serial.list.size(), backwards.list.size());
    for (size_t i = 0; i < serial.list.size(); ++i)
      EXPECT_TRUE(same_recipe(serial.list[i], backwards.list[i])) << seed << ' ' << i;
  }
}

// The same as a colourist says it, in words that the counts must obey.
TEST(Plainness, AgreesWithTheHabitsOfTheTrade) {
  Shelf shelf = small_shelf(0);
  auto add = [&](const char* id, double level, Tone tone, ProductClass cls) {
    Product p;
    p.id = p.name = id, p.range = "tint", p.level = level, p.tone = tone, p.cls = cls, p.stock_g = 500,
    p.price_per_g = 0.1;
    shelf.products.push_back(p);
  };
  add("6 gold", 6, Tone::gold, ProductClass::permanent);
  add("6 natural", 6, Tone::natural, ProductClass::permanent);
  add("8 natural", 8, Tone::natural, ProductClass::permanent);
  add("7 gold", 7, Tone::gold, ProductClass::permanent);
  add("violet drops", 0, Tone::violet, ProductClass::corrector);
  add("clear", 0, Tone::natural, ProductClass::clear);
  const RecipeSet set(shelf.ranges[0], shelf, {});
  const Ground ground{&set, shade_tree(set)};
  auto place = [&](const char* id) {
    for (size_t i = 0; i < set.products().size(); ++i)
      if (set.products()[i]->id == id) return static_cast<short>(i);
    ADD_FAILURE() << id;
    return short{0};
  };
  Target gold;
  gold.level = 6, gold.tone = Tone::gold;
  PlainWish wish;
  wish.wanted = {{&gold, 1, 6}};
  wish.needed_percent = 6;
  wish.lifts = true;
  auto plain = [&](std::vector<std::pair<const char*, int>> parts, double percent = 6) {
    Shares s;
    std::sort(parts.begin(), parts.end(), [&](auto& a, auto& b) { return place(a.first) < place(b.first); });
    for (size_t i = 0; i < parts.size(); ++i)
      s.product[i] = place(parts[i].first), s.eighths[i] = static_cast<signed char>(parts[i].second);
    const Setting setting{&shelf.ranges[0], percent, reference(shelf.ranges[0]).ratio, 35};
    return PlainGround(ground, wish).least(setting, branch_of(ground, s, 0));
  };
  EXPECT_LT(plain({{"6 gold", 8}}), plain({{"6 gold", 7}, {"6 natural", 1}}));  // one tube before two
  EXPECT_LT(plain({{"6 gold", 4}, {"6 natural", 4}}), plain({{"6 gold", 5}, {"6 natural", 2}, {"7 gold", 1}}));
  EXPECT_LT(plain({{"6 gold", 8}}), plain({{"7 gold", 8}}));  // the level that was wished
  EXPECT_LT(plain({{"6 gold", 4}, {"6 natural", 2}, {"violet drops", 2}}), plain({{"7 gold", 8}}));
  EXPECT_LT(plain({{"6 gold", 7}, {"violet drops", 1}}), plain({{"6 gold", 7}, {"7 gold", 1}}));
  EXPECT_LT(plain({{"6 gold", 8}}), plain({{"6 natural", 8}}));     // and the tone
  EXPECT_LT(plain({{"6 gold", 8}}, 6), plain({{"6 gold", 8}}, 9));  // the weakest that does it
  EXPECT_LT(plain({{"6 gold", 4}, {"7 gold", 4}}), plain({{"6 gold", 4}, {"8 natural", 4}}));  // neighbours
  EXPECT_LT(plain({{"6 gold", 5}, {"7 gold", 2}, {"6 natural", 1}}), plain({{"6 gold", 3}, {"clear", 5}}));
  EXPECT_LT(plain({{"6 gold", 5}, {"7 gold", 2}, {"6 natural", 1}}), plain({{"6 gold", 5}, {"violet drops", 3}}));
  wish.white = wish.covers = true;
  wish.natural_low = 0.4, wish.natural_high = 0.8;
  EXPECT_LT(plain({{"6 gold", 4}, {"6 natural", 4}}), plain({{"6 gold", 8}}));  // white asks for natural
  EXPECT_LT(plain({{"6 gold", 8}}), plain({{"6 gold", 7}, {"clear", 1}}));      // and for no clear
}

// Shares of natural as the trade steps them.
TEST(Plainness, NaturalFollowsTheWhite) {
  auto asked = [](double white_share, Tone tone) {
    Head head;
    head.areas.push_back(area("a", AreaKind::other, 200, {span("regrowth", 0, 2, white_share, 5)}));
    const Draws draws = draw(head, 1, 0);
    Target target;
    target.level = 6, target.tone = tone;
    SearchZone z;
    z.area = &head.areas[0], z.span = &head.areas[0].spans[0], z.draws = &draws.zones[0], z.target = &target;
    z.white = white_share;
    return plain_wish({z}, {0});
  };
  EXPECT_FALSE(asked(0.1, Tone::natural).white);
  EXPECT_EQ(asked(0.1, Tone::natural).natural_high, 1);
  const PlainWish third = asked(0.33, Tone::natural), most = asked(0.6, Tone::gold), all = asked(1, Tone::natural);
  EXPECT_TRUE(third.natural_low <= 0.25 && third.natural_high >= 0.375 && third.natural_high < 0.6);
  EXPECT_TRUE(most.natural_low <= 0.5 && most.natural_low > 0.3 && most.natural_high >= 0.75);
  EXPECT_GT(all.natural_low, 0.6);
  const PlainWish copper = asked(1, Tone::copper);  // at least a fifth, yet it stays copper
  EXPECT_TRUE(copper.natural_low >= 0.2 && copper.natural_low < 0.3 && copper.natural_high < 0.7);
}

}  // namespace
}  // namespace strandline
