#include "strandline/salon/world.h"

#include <chrono>
#include <ctime>
#include <random>

#include "strandline/store/move.h"

namespace strandline::salon {

std::string utc_now() {
  const std::time_t now = std::chrono::system_clock::to_time_t(std::chrono::system_clock::now());
  std::tm utc{};
  gmtime_r(&now, &utc);
  char text[32];
  std::strftime(text, sizeof text, "%Y-%m-%dT%H:%M:%SZ", &utc);
  return text;
}

namespace {

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

Problems told(const store::Trouble& trouble) { return {{trouble.code, "", {{"detail", trouble.detail}}}}; }

Result<store::Verified> whole(const store::Expected<store::Verified>& found) {
  if (!found) return tl::unexpected(told(found.error()));
  if (found->broken) return tl::unexpected(Problems{{"entry_broken", "", {{"seq", std::to_string(*found->broken)}}}});
  return *found;
}

}  // namespace

bool in_database(const std::string& place) { return store::is_address(place); }

store::Expected<World> real_world(const std::string& path, bool as_found, const std::string& key) {
  auto opened = store::Store::open({.path = path, .fails = {}, .as_found = as_found, .key = key});
  if (!opened) return tl::unexpected(opened.error());
  return World{utc_now, random_id, std::shared_ptr<store::Store>(std::move(*opened)),
               [path, key] { return recovery_words(path, key); }};
}

Result<void> make_salon(const std::string& path, const std::function<Result<void>(World&)>& fill,
                        const std::string& key) {
  Problems problems;
  const auto made =
      store::Store::make({.path = path, .fails = {}, .key = key}, [&](store::Store& store) -> store::Expected<void> {
        World world{utc_now, random_id, std::shared_ptr<store::Store>(&store, [](store::Store*) {}), {}};
        const auto filled = fill(world);
        if (filled) return {};
        problems = filled.error();
        return tl::unexpected(store::Trouble{"unfilled", "", 0});
      });
  if (made) return {};
  if (problems.empty()) problems = told(made.error());
  return tl::unexpected(problems);
}

Result<store::Verified> verify_salon(const std::string& path, const std::string& key) {
  return whole(store::Store::verify_file(path, key));
}

Result<store::Verified> back_up_salon(const std::string& path, const std::string& to, const std::string& key) {
  return whole(store::Store::back_up({.path = path, .fails = {}, .key = key}, to));
}

Result<store::Verified> restore_salon(const std::string& path, const std::string& from, const std::string& key) {
  return whole(store::Store::restore({.path = path, .fails = {}, .key = key}, from));
}

Result<store::Verified> move_salon(const std::string& from, const std::string& to, const std::string& key) {
  return whole(store::move_salon({.path = from, .fails = {}, .key = key}, to));
}

Result<std::string> recovery_words(const std::string& path, const std::string& key) {
  return store::Store::recovery_words({.path = path, .fails = {}, .key = key}).map_error(told);
}

Result<void> recover_key(const std::string& path, const std::string& words, const std::string& key) {
  return store::Store::recover_key({.path = path, .fails = {}, .key = key}, words).map_error(told);
}

}  // namespace strandline::salon
