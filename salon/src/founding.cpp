#include "strandline/salon/founding.h"

namespace strandline::salon {

Result<SignedIn> found_salon(People& people, Shelves& shelves, const Founding& founding, const std::string& title) {
  if (founding.shelf != "empty") return people.found(founding);
  // Kept once, under the same id, if the first try stops at a name or a passphrase; chosen only with the owner.
  constexpr const char* own = "own";
  const wire::Json nothing{{"title", title}, {"ranges", wire::Json::array()}, {"products", wire::Json::array()}};
  const auto shelf = shelves.save_new(nothing, "first-shelf-of-salon", own);
  if (!shelf && shelf.error().front().code != "shelf_id_taken" && shelf.error().front().code != "entry_id_taken")
    return tl::unexpected(shelf.error());
  auto founded = people.found(founding);
  if (!founded) return founded;
  if (auto chosen = shelves.choose(own); !chosen) return tl::unexpected(chosen.error());
  return founded;
}

}  // namespace strandline::salon
