#include "strandline/salon/roles.h"

#include <algorithm>

namespace strandline::salon {

std::optional<Roles> roles_of(const std::vector<std::string>& words) {
  Roles out = 0;
  for (const std::string& word : words) {
    const auto* found =
        std::find_if(role_words.begin(), role_words.end(), [&](const auto& r) { return r.first == word; });
    if (found == role_words.end()) return std::nullopt;
    out |= found->second;
  }
  return out ? std::optional(out) : std::nullopt;
}

std::vector<std::string> words_of(Roles roles) {
  std::vector<std::string> out;
  for (const auto& [word, role] : role_words) {
    if (roles & role) out.emplace_back(word);
  }
  return out;
}

bool may_manage(Roles mine, Roles theirs) {
  if (mine & owner) return true;
  return (mine & manager) && !(theirs & (manager | owner));
}

}  // namespace strandline::salon
