#include <cmath>
#include <limits>

#include "evidence/rows.h"
#include "strandline/law.h"

namespace strandline {
namespace {

constexpr double kNone = std::numeric_limits<double>::quiet_NaN();

double value(const Result<double>& r) { return r ? *r : kNone; }

law::Ingredient part(double grams, double peroxide) {
  law::Ingredient i;
  i.grams = grams;
  i.peroxide_percent = peroxide;
  i.fully_declared = true;
  return i;
}

double on_head(std::initializer_list<law::Ingredient> parts) {
  const auto r = law::on_head_peroxide(law::Composition(parts));
  return r && *r ? **r : kNone;
}

void peroxide(Rows& rows) {
  struct Row {
    double volumes, atm, bar, trade;
  };
  for (const Row& r :
       {Row{10, 3.035, 2.995, 3}, Row{20, 6.070, 5.991, 6}, Row{30, 9.105, 8.986, 9}, Row{40, 12.14, 11.98, 12}}) {
    const std::string id = "peroxide." + std::to_string(static_cast<int>(r.volumes)) + "vol.";
    rows.about(id + "1atm", r.atm, r.volumes == 40 ? 5e-3 : 5e-4,
               value(law::volume_to_percent_wv(r.volumes, law::GasState::one_atm)),
               law_or_identity("gas law, 22.414 L/mol"));
    rows.about(id + "1bar", r.bar, r.volumes == 40 ? 5e-3 : 5e-4,
               value(law::volume_to_percent_wv(r.volumes, law::GasState::one_bar)),
               law_or_identity("gas law, 22.711 L/mol"));
    rows.about(id + "trade", r.trade, 1e-9, value(law::trade_percent(r.volumes)), practice());
  }
}

void mixing(Rows& rows) {
  const Basis source = law_or_identity("mass balance");
  rows.about("on_head.12percent.1to1", 6, 1e-9, on_head({part(30, 0), part(30, 12)}), source);
  rows.about("on_head.12percent.1to1.5", 7.2, 1e-9, on_head({part(40, 0), part(60, 12)}), source);
  rows.about("on_head.12percent.1to2", 8, 1e-9, on_head({part(30, 0), part(60, 12)}), source);
  rows.about("on_head.6percent.1to2", 4, 1e-9, on_head({part(30, 0), part(60, 6)}), source);
  rows.about("blend.50vol.20vol.20vol", 30, 1e-9, value(law::blend({{1, 50}, {1, 20}, {1, 20}})), source);
  rows.about("blend.30vol.water", 15, 1e-9, value(law::blend({{30, 30}, {30, 0}})), source);
  const auto diluted = law::dilute(12, 9, 90);
  rows.about("dilute.12to9.90ml", 67.5, 1e-9, diluted ? diluted->concentrate : kNone, source);
  const auto parts = law::alligate(10, 40, 20);
  rows.about("alligate.10.40.20", 2, 1e-9, parts ? parts->weaker_parts / parts->stronger_parts : kNone, source);
  const auto split = law::split_by_ratio(100, {1, 1.5});
  rows.about("split.100g.1to1.5", 40, 1e-9, split ? (*split)[0] : kNone, source);
  const auto scaled = law::scale_to_weighed({40, 60}, 0, 41.3);
  rows.about("weighed_error.41.3g", 61.95, 1e-9, scaled ? (*scaled)[1] : kNone, source);
}

void limits(Rows& rows) {
  const Basis source = law_or_identity("Regulation (EC) 1223/2009, Annex III; standard atomic masses");
  struct Salt {
    const char *entry, *form;
    double base;
  };
  for (const Salt& s : {Salt{"8a", "sulfate", 0.5244}, Salt{"8a", "dihydrochloride", 0.5973},
                        Salt{"9a", "sulfate", 0.5547}, Salt{"203", "dihydrochloride", 0.6775},
                        Salt{"226", "tetrahydrochloride", 0.6641}, Salt{"292", "sulfate", 0.6081}})
    rows.about(std::string("salt.") + s.entry + "." + s.form, s.base, 1e-4,
               law::reference_per_gram(s.entry, s.form).value_or(kNone), source);

  // p-Phenylenediamine sulfate 3.0 % at 1:1.5 is 0.63 % base on the head.
  law::Ingredient tube = part(40, 0);
  tube.declared = {{"16245-77-5", "8a", "p-Phenylenediamine sulfate", 3.0, "sulfate"}};
  const auto report = law::check_limits({tube, part(60, 6)}, law::Use::oxidative_dye);
  double got = kNone;
  if (report)
    for (const auto& e : report->entries)
      if (e.entry == "8a") got = e.on_head_percent.value_or(kNone);
  rows.about("limit.8a.on_head", 0.629, 5e-3, got, source);
}

}  // namespace

void law_rows(Rows& rows) {
  peroxide(rows);
  mixing(rows);
  limits(rows);
}

}  // namespace strandline
