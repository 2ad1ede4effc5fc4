// What the server counts of itself, told as the text format that Prometheus reads: of nobody, and of nothing that was
// asked.
#pragma once

#include <array>
#include <chrono>
#include <filesystem>
#include <map>
#include <mutex>
#include <string>
#include <string_view>
#include <tuple>

#include "strandline/salon/desk.h"

namespace strandline::server {

// Safe from many threads at once.
class Metrics {
 public:
  // One answer, made in `seconds`. `route` and `method` are words of the table of routes, so that their number is
  // bounded.
  void count(std::string_view method, std::string_view route, int status, double seconds);
  // All of it (text format 0.0.4). `known`: heavy questions answered without work. `salon_file` "" = no file is
  // measured.
  std::string text(const salon::Desk::Load& desk, std::uint64_t known, const std::filesystem::path& salon_file) const;

 private:
  // Upper ends of the classes of a duration, in seconds; the last has none.
  static constexpr std::array bounds{0.001, 0.005, 0.02, 0.05, 0.1, 0.25, 0.5, 1.0, 2.5, 5.0, 10.0, 30.0};
  struct Durations {
    std::array<std::uint64_t, bounds.size() + 1> classes{};
    double sum = 0;
  };

  mutable std::mutex mutex_;
  std::map<std::tuple<std::string, std::string, int>, std::uint64_t> answers_;  // route, method, status
  std::map<std::string, Durations> durations_;                                  // by route
  const std::chrono::system_clock::time_point began_ = std::chrono::system_clock::now();
};

}  // namespace strandline::server
