// What people of the salon may be. Somebody may be several at once.
#pragma once

#include <array>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace strandline::salon {

using Roles = unsigned;  // any of these bits

inline constexpr Roles colourist = 1, assistant = 2, apprentice = 4, manager = 8, owner = 16;
inline constexpr Roles everybody = colourist | assistant | apprentice | manager | owner;
// Who works on hair: for them health answers and tests are opened. An owner answers for both by law.
inline constexpr Roles opens_health = colourist | assistant | apprentice | owner;

inline constexpr std::array<std::pair<std::string_view, Roles>, 5> role_words{{{"colourist", colourist},
                                                                               {"assistant", assistant},
                                                                               {"apprentice", apprentice},
                                                                               {"manager", manager},
                                                                               {"owner", owner}}};

// Nothing when a word is no role, or there is none.
std::optional<Roles> roles_of(const std::vector<std::string>& words);
std::vector<std::string> words_of(Roles roles);

// Whether somebody with these roles may add, change or sign out one who has, and would have, those.
bool may_manage(Roles mine, Roles theirs);

}  // namespace strandline::salon
