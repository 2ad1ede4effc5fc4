// One range on one zone of a visit, and every fact that a rule may ask about it.
#pragma once

#include <optional>
#include <span>
#include <string>
#include <string_view>

#include "strandline/visit.h"

namespace strandline {

struct Place {
  const Visit& visit;
  const Area& area;
  const Span& span;
  const Range& range;
  std::string_view cls;            // as rules call it: class_in_rules
  const Target* target = nullptr;  // the wish for the zone
  const Bowl* bowl = nullptr;      // an own bowl that is meant for it
  double white_apart = 0;          // between the wished zones at the scalp with the most and the least white, share
};

// The word of knowledge/rules for a range on this span: the two demis apart, a lightener by whether it touches the
// skin, a pre-treatment by whether it takes a developer. Empty for what goes beside a bowl.
std::string_view class_in_rules(const Range& range, const Area& area, const Span& span);
// Packets are kept off the skin.
bool touches_skin(const Area& area, const Span& span);

// Yes or no as 1 or 0, or a number in the unit of its name; absent where it is not known or does not apply.
using FactValue = std::optional<double> (*)(const Place&);
struct FactRow {
  std::string_view name;
  FactValue value;
};
std::span<const FactRow> person_facts();
std::span<const FactRow> test_facts();
std::span<const FactRow> history_facts();
std::span<const FactRow> hair_facts();
std::span<const FactRow> bowl_facts();
// Null for a word that no rule may use.
FactValue find_fact(std::string_view name);

// Days from one civil date to another; absent where one is empty or none.
std::optional<double> days_between(std::string_view from, std::string_view to);
// The civil date so many whole months after another, the last of its month where it has fewer days; empty where it is
// none.
std::string months_after(std::string_view date, double months);

}  // namespace strandline
