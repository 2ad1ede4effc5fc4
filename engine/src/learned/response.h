// What the zones of a visit come out at, given what is known of everybody who has a hand in it.
#pragma once

#include <map>
#include <string>
#include <vector>

#include "strandline/learned.h"
#include "strandline/scenario.h"

namespace strandline::learned {

using Effects = std::map<std::string, Effect>;  // by range

// The same range with these effects; and a product of it. `offer` is worked out where it is not yet.
void apply_to(Range& range, const Effect& effect);
void apply_to(Product& product, const Range& range, const Effect& effect);

class Response {
 public:
  // Of the zones that were seen and touched. Problems: unknown_range, unknown_product, unknown_zone.
  static Result<Response> of(const Outcome& outcome);

  // How the hair was read: with an eye this many levels too light, and a head whose own level and share of white are
  // these; empty = as read.
  struct Readings {
    double eye = 0;
    std::optional<double> natural = {}, white = {};
  };
  // The zones before anything is mixed, and what they come out at.
  std::vector<ZoneDraws> read(const Readings& readings) const;
  std::vector<Lab> after(std::vector<ZoneDraws> zones, const Effects& effects) const;
  // The first pigmented hair that is as it grew, where there is some.
  struct Natural {
    double level = 0;
    bool measured = false;
  };
  const std::optional<Natural>& natural() const { return natural_; }
  // The first share of white that grew beside it.
  const std::optional<double>& white() const { return white_; }

  const std::vector<Seen>& zones() const { return zones_; }
  const std::vector<std::string>& ranges() const { return ranges_; }
  std::vector<std::string> ranges_on(const std::string& zone) const;

 private:
  ZoneDraws zone_as_read(const Span& span, const Readings& readings) const;

  Head head_;
  std::optional<Natural> natural_;
  std::optional<double> white_;
  std::vector<Step> steps_;
  Shelf shelf_;  // what is mixed from, no more
  std::vector<Seen> zones_;
  std::vector<std::string> ranges_;
};

}  // namespace strandline::learned
