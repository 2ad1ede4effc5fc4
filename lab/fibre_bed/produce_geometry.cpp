#include <cmath>
#include <cstdio>

#include "knowledge_file.h"
#include "lightness.h"
#include "produce.h"

namespace strandline::fibre_bed {

namespace {

const char* kSource = "computed: light transport in a bed of parallel fibres, packing 0.5, tilt sd 0.08 rad";

constexpr const char* kReflectance = "reflectance";

struct View {
  const char* name;
  std::vector<Value> Geometry::* values;
};
constexpr View kViews[] = {{"sphere", &Geometry::sphere},
                           {"sphere_excluded", &Geometry::sphere_excluded},
                           {"average_45_0", &Geometry::average},
                           {"along_45_0", &Geometry::along},
                           {"across_45_0", &Geometry::across}};

// Floor of a view, or how far it lies from the sphere's, over all beds: reference value, sd of Monte Carlo
// and of the beds.
ConstantsFile::Constant over_beds(const std::string& key, const std::vector<Geometry>& studies, const std::string& unit,
                                  const std::string& source, auto floor) {
  const Value reference = floor(studies[0]);
  double sum = 0;
  for (size_t v = 1; v < studies.size(); ++v) sum += std::pow(floor(studies[v]).value - reference.value, 2);
  const double beds = sum / double(studies.size() - 1);
  return {key, reference.value, std::sqrt(beds + reference.error * reference.error), unit, source};
}

}  // namespace

void produce_geometry(const Output& out) {
  const auto beds = variants();
  std::vector<Geometry> studies;
  for (size_t v = 0; v < beds.size(); ++v)
    studies.push_back(study_geometry(beds[v].bed, v == 0 ? 1.6e6 : 1.6e5, out.effort));
  const Geometry& g = studies[0];
  TableFile file{"geometry_curves",
                 "Reflectance by measuring geometry: sphere with and without specular, 45/0 averaged over, "
                 "along and across the fibres",
                 "optical depth; reflectance",
                 kSource,
                 out.command,
                 {"tau"},
                 {}};
  for (const View& v : kViews) file.columns.push_back(v.name), file.columns.push_back(std::string(v.name) + "_error");
  std::printf("%9s %18s %18s %18s %18s %18s\n", "tau", "sphere", "excluded", "45/0 average", "along", "across");
  for (size_t i = 0; i < g.tau.size(); ++i) {
    std::vector<double> row{g.tau[i]};
    std::printf("%9.4f", g.tau[i]);
    for (const View& v : kViews) {
      const Value x = (g.*v.values)[i];
      row.push_back(x.value), row.push_back(x.error);
      std::printf("  %.5f +- %.5f", x.value, x.error);
    }
    std::printf("\n");
    file.rows.push_back(row);
  }
  write_file(out.folder + "/geometry_curves.json", to_json(file));
  ConstantsFile constants{"Black by measuring geometry", out.command, {}};
  const std::string source = std::string(kSource) + "; sd over eight beds and of the Monte Carlo";
  for (const View& v : kViews)
    constants.constants.push_back(over_beds(std::string("bed_floor_") + v.name, studies, "reflectance", source,
                                            [&](const Geometry& s) { return (s.*v.values).back(); }));
  for (const View& v : {kViews[1], kViews[2]})
    constants.constants.push_back(over_beds(std::string("bed_shift_") + v.name, studies,
                                            "reflectance, to add to a sphere reading of black", source,
                                            [&](const Geometry& s) {
                                              const Value a = (s.*v.values).back(), b = s.sphere.back();
                                              return Value{a.value - b.value, std::hypot(a.error, b.error)};
                                            }));
  write_file(out.folder + "/geometry_floors.json", to_json(constants));
  for (const auto& c : constants.constants) {
    std::printf("%-28s %9.5f sd %.5f", c.key.c_str(), c.value, c.sd);
    if (c.unit == kReflectance) std::printf("  L* %.1f", lightness(c.value));
    std::printf("\n");
  }
}

}  // namespace strandline::fibre_bed
