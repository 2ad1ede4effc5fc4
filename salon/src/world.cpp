#include "strandline/salon/world.h"

#include <chrono>
#include <ctime>
#include <random>

namespace strandline::salon {

namespace {

std::string utc_now() {
  const std::time_t now = std::chrono::system_clock::to_time_t(std::chrono::system_clock::now());
  std::tm utc{};
  gmtime_r(&now, &utc);
  char text[32];
  std::strftime(text, sizeof text, "%Y-%m-%dT%H:%M:%SZ", &utc);
  return text;
}

// 22 of 62 signs: 131 bits.
std::string random_id() {
  static constexpr char signs[] = "0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz";
  constexpr int length = 22;
  std::random_device device;
  std::uniform_int_distribution<std::size_t> pick(0, sizeof signs - 2);
  std::string out;
  for (int i = 0; i < length; ++i) out += signs[pick(device)];
  return out;
}

}  // namespace

store::Expected<World> real_world(const std::string& path) {
  auto opened = store::Store::open({.path = path, .fails = {}});
  if (!opened) return tl::unexpected(opened.error());
  return World{utc_now, random_id, std::shared_ptr<store::Store>(std::move(*opened))};
}

}  // namespace strandline::salon
