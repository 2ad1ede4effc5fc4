#include "formulate/share_out.h"

#include <algorithm>
#include <limits>
#include <map>

#include "formulate/evenness.h"

namespace strandline {
namespace {

constexpr double kSlack = 1e-9;  // g

using Needs = std::map<std::string, double>;  // grams by product

struct Offer {
  const Candidate* candidate;
  Needs needs;
};

class Sharing {
 public:
  Sharing(const ChoiceInput& in, const Choice& choice) : in_(in) {
    for (const Product& p : in.shelf.products) left_[p.id] = p.stock_g;
    for (const Chosen& bowl : choice.bowls) {
      std::vector<Offer> offers;
      const MixGrams grams = bowl_wish(in, bowl.zones).grams;
      for (const Candidate& c : bowl.list) {
        const Setting& setting = in.domain.settings[static_cast<size_t>(c.setting)].setting;
        const Formula f = pour(in.domain.sets[static_cast<size_t>(c.set)], c.shares, setting, grams.of(*setting.range),
                               in.shelf, in.policy);
        Needs needs;
        for (const Part& part : f.parts) needs[part.product] += part.grams;
        offers.push_back({&c, std::move(needs)});
      }
      bowls_.push_back(std::move(offers));
    }
    const auto cheaper = [](const Offer& a, const Offer& b) { return a.candidate->objective < b.candidate->objective; };
    for (auto& offers : bowls_) std::stable_sort(offers.begin(), offers.end(), cheaper);
    // The first of each of the rest is the least that the rest can cost.
    rest_.assign(bowls_.size() + 1, 0);
    for (size_t b = bowls_.size(); b-- > 0;) rest_[b] = rest_[b + 1] + bowls_[b].front().candidate->objective;
    taken_.resize(bowls_.size());
  }

  // What the bests as they were chosen need more of than there is.
  std::vector<std::string> short_of(const Choice& choice) const {
    Needs together;
    for (size_t b = 0; b < bowls_.size(); ++b) {
      const auto own = std::find_if(bowls_[b].begin(), bowls_[b].end(),
                                    [&](const Offer& o) { return same_recipe(*o.candidate, choice.bowls[b].best); });
      for (const auto& [product, grams] : own->needs) together[product] += grams;
    }
    std::vector<std::string> all;
    for (const auto& [product, grams] : together)
      if (grams > left_.at(product) + kSlack) all.push_back(product);
    return all;
  }

  std::vector<const Candidate*> cheapest() {
    look(0, 0);
    return best_;
  }

 private:
  bool pour_from(const Needs& needs) {
    const bool there =
        std::all_of(needs.begin(), needs.end(), [&](const auto& n) { return n.second <= left_[n.first] + kSlack; });
    if (there)
      for (const auto& [product, grams] : needs) left_[product] -= grams;
    return there;
  }

  void look(size_t bowl, double cost) {
    constexpr double kSame = 1e-12;
    if (cost + rest_[bowl] >= least_ - kSame || in_.cancelled()) return;
    if (bowl == bowls_.size()) {
      least_ = cost;
      best_ = taken_;
      return;
    }
    for (const Offer& o : bowls_[bowl]) {
      if (cost + o.candidate->objective + rest_[bowl + 1] >= least_ - kSame) return;
      if (!pour_from(o.needs)) continue;
      taken_[bowl] = o.candidate;
      look(bowl + 1, cost + o.candidate->objective);
      for (const auto& [product, grams] : o.needs) left_[product] += grams;
    }
  }

  const ChoiceInput& in_;
  std::vector<std::vector<Offer>> bowls_;
  std::map<std::string, double> left_;
  std::vector<double> rest_;
  std::vector<const Candidate*> taken_, best_;
  double least_ = std::numeric_limits<double>::infinity();
};

}  // namespace

std::vector<std::string> share_out(const ChoiceInput& in, Choice& choice) {
  if (choice.bowls.size() < 2) return {};
  Sharing sharing(in, choice);
  const std::vector<std::string> short_of = sharing.short_of(choice);
  if (short_of.empty()) return {};
  const std::vector<const Candidate*> shared = sharing.cheapest();
  if (shared.empty()) return {};
  choice.objective -= choice.uneven;
  for (size_t b = 0; b < choice.bowls.size(); ++b) {
    Chosen& bowl = choice.bowls[b];
    choice.objective += shared[b]->objective - bowl.best.objective;
    bowl.best = *shared[b];
    bowl.others = other_formulas(in, bowl.list, bowl.best);
  }
  choice.uneven = unevenness(in, choice);
  choice.objective += choice.uneven;
  return short_of;
}

}  // namespace strandline
