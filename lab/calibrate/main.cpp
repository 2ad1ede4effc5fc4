// calibrate: fits the model's constants to published facts and rules of the trade.
#include <cstdio>
#include <stdexcept>
#include <string>

#include "fit.h"
#include "knowledge.h"
#include "predict.h"
#include "profile.h"
#include "report.h"
#include "spectra.h"

namespace {

using namespace strandline::calibrate;

constexpr const char* kHelp =
    R"(calibrate: one joint fit of level anchors, melanin, lightening, keratin and uptake, with priors

usage: calibrate [--knowledge FOLDER] [--write] [--grid] [--quick] [--spectra FILE]

  (nothing)        residual of every datum, worst first; priors and posteriors; correlations; what the data cannot tell
  --grid           level reached by natural 1-7, shade natural … +4, 3/6/9/12 %, against the two rules of the trade
  --spectra FILE   fits measured reflectance (a table: nm, then one column a sample) with two melanins and a floor
  --quick          spreads by Laplace's approximation alone, not along the profiles (nothing is written)
  --write          puts values, spreads, anchors and correlations into FOLDER
  --knowledge      default knowledge; its calibration/ holds priors.json and data.json

Levenberg-Marquardt on standardised residuals; the posterior is Laplace's approximation with each spread taken along
the constant's profile.
)";

struct Choice {
  std::string knowledge = "knowledge", spectra;
  bool help = false, grid = false, write = false, quick = false;
};

Choice parse(int argc, char** argv) {
  Choice c;
  for (int i = 1; i < argc; ++i) {
    const std::string option = argv[i];
    auto next = [&]() -> std::string {
      if (i + 1 == argc) throw std::invalid_argument(option + " needs a value");
      return argv[++i];
    };
    if (option == "--help")
      c.help = true;
    else if (option == "--grid")
      c.grid = true;
    else if (option == "--quick")
      c.quick = true;
    else if (option == "--write")
      c.write = true;
    else if (option == "--spectra")
      c.spectra = next();
    else if (option == "--knowledge")
      c.knowledge = next();
    else
      throw std::invalid_argument("unknown option " + option + "; see --help");
  }
  return c;
}

int work(const Choice& c) {
  const Problem problem = read_problem(c.knowledge + "/calibration");
  const Fit joint = fit(problem, prior_point(problem));
  const Fit found = c.quick ? joint : with_profile_spread(problem, joint);
  const Hair hair = hair_at(problem, found.x);
  print_residuals(problem, found, stdout);
  print_parameters(problem, found, stdout);
  print_correlations(problem, found, stdout);
  std::printf("\n%zu data, %zu parameters, cost %.2f after %d steps%s\n", problem.data.size(),
              problem.parameters.size(), found.cost, found.steps, found.converged ? "" : ": NOT CONVERGED");
  if (c.grid) print_grid(lift_grid(hair), stdout);
  if (!c.spectra.empty()) {
    std::vector<SpectrumFit> fits;
    for (const MeasuredSpectrum& m : read_spectra(c.spectra)) fits.push_back(fit_spectrum(m, hair.constants()));
    print_spectra(fits, stdout);
  }
  if (!found.converged) throw std::runtime_error("the fit did not converge; nothing is written");
  if (c.write && !c.quick) write_knowledge(problem, found, c.knowledge, "calibrate --write");
  return 0;
}

}  // namespace

int main(int argc, char** argv) {
  try {
    const Choice c = parse(argc, argv);
    return c.help ? std::fputs(kHelp, stdout) < 0 : work(c);
  } catch (const std::invalid_argument& e) {
    std::fprintf(stderr, "calibrate: %s\n", e.what());
    return 2;
  } catch (const std::exception& e) {
    std::fprintf(stderr, "calibrate: %s\n", e.what());
    return 1;
  }
}
