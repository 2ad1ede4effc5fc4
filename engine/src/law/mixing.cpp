#include <numeric>

#include "law/check.h"
#include "strandline/law.h"

namespace strandline::law {

Result<double> blend(const std::vector<Portion>& portions) {
  double total = 0, active = 0;
  for (std::size_t i = 0; i < portions.size(); ++i) {
    const auto& portion = portions[i];
    if (!amount(portion.amount)) return refuse("not_an_amount", "/" + std::to_string(i) + "/amount");
    if (!amount(portion.percent)) return refuse("not_an_amount", "/" + std::to_string(i) + "/percent");
    total += portion.amount;
    active += portion.amount * portion.percent;
  }
  if (!(total > 0)) return refuse("nothing_in_the_bowl", "");
  return active / total;
}

Result<Dilution> dilute(double stock_percent, double wanted_percent, double total) {
  if (!amount(stock_percent) || stock_percent == 0) return refuse("not_a_strength", "/stock_percent");
  if (!amount(wanted_percent)) return refuse("not_an_amount", "/wanted_percent");
  if (wanted_percent > stock_percent) return refuse("stronger_than_the_stock", "/wanted_percent");
  if (!amount(total)) return refuse("not_an_amount", "/amount");
  const double concentrate = total * wanted_percent / stock_percent;
  return Dilution{concentrate, total - concentrate};
}

Result<Alligation> alligate(double weaker_percent, double stronger_percent, double wanted_percent) {
  if (!amount(weaker_percent)) return refuse("not_an_amount", "/weaker_percent");
  if (!amount(stronger_percent) || stronger_percent <= weaker_percent)
    return refuse("not_stronger", "/stronger_percent");
  if (!amount(wanted_percent) || wanted_percent < weaker_percent || wanted_percent > stronger_percent)
    return refuse("outside_the_two_strengths", "/wanted_percent");
  return Alligation{stronger_percent - wanted_percent, wanted_percent - weaker_percent};
}

Result<std::vector<double>> scale_to_weighed(const std::vector<double>& planned, std::size_t index, double weighed) {
  for (std::size_t i = 0; i < planned.size(); ++i)
    if (!amount(planned[i])) return refuse("not_an_amount", "/planned/" + std::to_string(i));
  if (index >= planned.size() || planned[index] == 0) return refuse("part_not_planned", "/index");
  if (!amount(weighed)) return refuse("not_an_amount", "/weighed");
  auto scaled = planned;
  for (auto& grams : scaled) grams *= weighed / planned[index];
  scaled[index] = weighed;
  return scaled;
}

Result<std::vector<double>> split_by_ratio(double total, const std::vector<double>& ratio) {
  if (!amount(total)) return refuse("not_an_amount", "/total");
  for (std::size_t i = 0; i < ratio.size(); ++i)
    if (!amount(ratio[i])) return refuse("not_an_amount", "/ratio/" + std::to_string(i));
  const double sum = std::accumulate(ratio.begin(), ratio.end(), 0.0);
  if (!(sum > 0)) return refuse("empty_ratio", "/ratio");
  std::vector<double> grams;
  for (const double parts : ratio) grams.push_back(total * parts / sum);
  return grams;
}

}  // namespace strandline::law
