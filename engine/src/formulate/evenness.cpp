#include "formulate/evenness.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "predict/view.h"
#include "strandline/grow.h"

namespace strandline {
namespace {

using Colours = std::vector<Lab>;  // one per scenario

// A zone as its neighbours see it: what it shall look like, which for hair that stays is what it looks like.
struct Place {
  const std::string* area;
  const Span* span;
  const ZoneDraws* draws;
  Lab wished;
  double weight;
};

// The zones with a wish as the search counts them, then those that stay as they are.
std::vector<Place> places(const ChoiceInput& in) {
  std::vector<Place> all;
  for (const SearchZone& z : in.zones) all.push_back({&z.area->id, z.span, z.draws, z.target->lab, z.weight});
  const std::vector<ZoneRef> refs = zones(in.head);
  for (size_t i = 0; i < refs.size(); ++i) {
    const ZoneDraws& own = in.draws.zones[i];
    if (std::any_of(in.zones.begin(), in.zones.end(), [&](const SearchZone& z) { return z.draws->id == own.id; }))
      continue;
    all.push_back({&refs[i].area->id, refs[i].span, &own, view(own.nominal, own.kinds, in.draws.nominal).lab, 0});
  }
  return all;
}

struct Join {
  size_t above, below;  // places, from the scalp out
  double wanted;        // contrast that the wishes ask for, levels
  double weight;
};

std::vector<Join> joins(const ChoiceInput& in, const std::vector<Place>& all_places) {
  constexpr double kTouchingCm = 0.05;  // by choice: half of the 0.1 cm to which spans are told
  std::vector<Join> all;
  for (size_t i = 0; i < all_places.size(); ++i)
    for (size_t j = 0; j < all_places.size(); ++j) {
      const Place &above = all_places[i], &below = all_places[j];
      const double weight = (above.weight + below.weight) / 2 / in.total_weight;
      if (weight > 0 && *above.area == *below.area && i != j &&
          std::abs(above.span->to_cm - below.span->from_cm) <= kTouchingCm)
        all.push_back({i, j, line_contrast(above.wished, below.wished, in.draws.nominal), weight});
    }
  return all;
}

Colours seen(const ZoneTable& table, const Spectrum& load) {
  const std::vector<float> single(load.begin(), load.end());
  Colours all;
  for (const ScenarioColour& c : colours(table, single.data())) all.push_back(c.lab);
  return all;
}

// What each zone looks like under each candidate of its bowl; one entry where it is left as it is.
struct Looks {
  int bowl = -1;
  std::vector<Colours> by_candidate;
};

std::vector<Looks> looks(const ChoiceInput& in, const Choice& choice, const std::vector<Place>& all_places) {
  std::vector<Looks> all(all_places.size());
  for (size_t z = 0; z < all.size(); ++z) {
    for (size_t b = 0; b < choice.bowls.size(); ++b) {
      const Chosen& bowl = choice.bowls[b];
      if (std::find(bowl.zones.begin(), bowl.zones.end(), static_cast<int>(z)) == bowl.zones.end()) continue;
      all[z].bowl = static_cast<int>(b);
      for (const Candidate& c : bowl.list) {
        const double ratio = in.domain.settings[static_cast<size_t>(c.setting)].setting.ratio;
        const size_t own = static_cast<size_t>(std::find(bowl.zones.begin(), bowl.zones.end(), static_cast<int>(z)) -
                                               bowl.zones.begin());
        all[z].by_candidate.push_back(seen(in.table(c.setting, static_cast<int>(z), minutes_on(in, c, bowl.zones)[own]),
                                           in.domain.sets[static_cast<size_t>(c.set)].load(c.shares, ratio)));
      }
    }
    if (all[z].bowl < 0) all[z].by_candidate.push_back(seen(zone_table(*all_places[z].draws, in.draws), Spectrum{}));
  }
  return all;
}

double price(const ChoiceInput& in, const Join& join, const Colours& above, const Colours& below) {
  const Constants& c = in.draws.nominal;
  double sum = 0;
  for (size_t s = 0; s < above.size(); ++s)
    sum += std::max(0.0, line_contrast(above[s], below[s], c) - join.wanted - c.line_least_levels);
  return c.price_uneven_per_level * join.weight * sum / static_cast<double>(above.size());
}

}  // namespace

double unevenness(const ChoiceInput& in, const Choice& choice) {
  Choice taken;  // each bowl's own formula alone
  for (const Chosen& bowl : choice.bowls)
    taken.bowls.push_back(
        {.zones = bowl.zones, .best = bowl.best, .certified = bowl.certified, .others = {}, .list = {bowl.best}});
  const std::vector<Place> all_places = places(in);
  const std::vector<Looks> zones = looks(in, taken, all_places);
  double sum = 0;
  for (const Join& j : joins(in, all_places))
    sum += price(in, j, zones[j.above].by_candidate[0], zones[j.below].by_candidate[0]);
  return sum;
}

void even_out(const ChoiceInput& in, Choice& choice) {
  const std::vector<Place> all_places = places(in);
  const std::vector<Join> all = joins(in, all_places);
  if (all.empty() || choice.bowls.empty()) return;
  if (in.cancelled()) {  // as they were chosen
    choice.uneven = unevenness(in, choice);
    choice.objective += choice.uneven;
    return;
  }
  const std::vector<Looks> zones = looks(in, choice, all_places);
  std::vector<size_t> taken(choice.bowls.size(), 0);
  auto look = [&](size_t zone) -> const Colours& {
    const Looks& own = zones[zone];
    return own.by_candidate[own.bowl < 0 ? 0 : taken[static_cast<size_t>(own.bowl)]];
  };
  auto touches = [&](const Join& j, size_t bowl) {
    return zones[j.above].bowl == static_cast<int>(bowl) || zones[j.below].bowl == static_cast<int>(bowl);
  };
  for (bool moved = true; moved;) {
    moved = false;
    for (size_t b = 0; b < choice.bowls.size(); ++b) {
      const std::vector<Candidate>& list = choice.bowls[b].list;
      const size_t before = taken[b];
      size_t best = before;
      double least = std::numeric_limits<double>::infinity();
      for (size_t c = 0; c < list.size(); ++c) {
        taken[b] = c;
        // The first is the plainest; another one has to earn that, and what it costs more.
        double sum =
            c == 0 ? 0 : in.draws.nominal.even_least_gain + std::max(0.0, list[c].objective - list[0].objective);
        for (const Join& j : all)
          if (touches(j, b)) sum += price(in, j, look(j.above), look(j.below));
        if (sum < least - 1e-9 || (c == before && sum <= least)) least = sum, best = c;
      }
      taken[b] = best;
      moved = moved || best != before;
    }
  }
  for (const Join& j : all) choice.uneven += price(in, j, look(j.above), look(j.below));
  choice.objective += choice.uneven;
  for (size_t b = 0; b < choice.bowls.size(); ++b) {
    Chosen& bowl = choice.bowls[b];
    choice.objective += bowl.list[taken[b]].objective - bowl.best.objective;
    bowl.best = bowl.list[taken[b]];
    bowl.others = other_formulas(in, bowl.list, bowl.best);
  }
}

}  // namespace strandline
