#include "generated/law_data.h"
#include "law/check.h"
#include "strandline/law.h"

namespace strandline::law {
namespace {

// % w/v that gives one volume: 2 mol of H2O2 give one mol of O2.
double percent_per_volume(GasState state) {
  const double litres = state == GasState::one_atm ? law_data::molar_volume_atm : law_data::molar_volume_bar;
  return 2 / litres * law_data::molar_mass / 10;  // g/L to g per 100 mL
}

}  // namespace

Result<double> volume_to_percent_wv(double volumes, GasState state) {
  if (!amount(volumes)) return refuse("not_an_amount", "/volumes");
  return volumes * percent_per_volume(state);
}

Result<double> percent_wv_to_volume(double percent_wv, GasState state) {
  if (!amount(percent_wv)) return refuse("not_an_amount", "/percent_wv");
  return percent_wv / percent_per_volume(state);
}

Result<double> trade_percent(double volumes) {
  if (!amount(volumes)) return refuse("not_an_amount", "/volumes");
  return volumes * law_data::trade_percent_per_volume;
}

Result<double> percent_wv_from_ww(double percent_ww, double density_g_per_ml) {
  if (!amount(percent_ww) || percent_ww > 100) return refuse("not_a_percentage", "/percent_ww");
  if (!amount(density_g_per_ml) || density_g_per_ml == 0) return refuse("not_a_density", "/density_g_per_ml");
  return percent_ww * density_g_per_ml;
}

}  // namespace strandline::law
