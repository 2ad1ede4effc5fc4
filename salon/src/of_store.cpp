#include "of_store.h"

#include <charconv>

namespace strandline::salon {

tl::unexpected<Problems> problem_of(const store::Trouble& trouble) {
  if (trouble.code == "store_conflict")
    return tl::unexpected(Problems{{"visit_changed_elsewhere", "", {{"seq", std::to_string(trouble.seq)}}}});
  if (trouble.code == "store_id_taken")
    return tl::unexpected(Problems{{"entry_id_taken", "", {{"id", trouble.detail}}}});
  return tl::unexpected(Problems{{trouble.code, "", {{"detail", trouble.detail}}}});
}

Result<std::string> id_for(World& world, const std::string& given) {
  constexpr std::size_t shortest = 16, longest = 80;
  constexpr std::string_view signs = "0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz-_";
  if (given.empty()) return world.new_id();
  if (given.size() < shortest || given.size() > longest || given.find_first_not_of(signs) != std::string::npos)
    return tl::unexpected(Problems{{"not_an_id", "", {{"id", given}}}});
  return given;
}

Result<std::int64_t> place_of(const std::string& cursor, std::int64_t beginning) {
  if (cursor.empty()) return beginning;
  std::int64_t out = 0;
  const char* end = cursor.data() + cursor.size();
  const auto read = std::from_chars(cursor.data(), end, out);
  if (read.ec != std::errc{} || read.ptr != end || out < 1)
    return tl::unexpected(Problems{{"bad_request", "", {{"what", "cursor"}}}});
  return out;
}

}  // namespace strandline::salon
