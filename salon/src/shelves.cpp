#include "strandline/salon/shelves.h"

#include <algorithm>

#include "members.h"
#include "of_store.h"
#include "strandline/line.h"
#include "strandline/predict.h"
#include "strandline/treatment.h"

namespace strandline::salon {

namespace {

constexpr const char *kSaved = "shelf_saved", *kTube = "tube", *kChosen = "shelf_chosen", *kDemo = "demo";
constexpr const char* kChoices = "shelves";  // stream of the choices

std::string stream_of(const std::string& id) { return "shelf:" + id; }
std::string tubes_of(const std::string& id) { return "tubes:" + id; }

tl::unexpected<Problems> one(const char* code, std::map<std::string, std::string> params = {}) {
  return tl::unexpected(Problems{{code, "", std::move(params)}});
}

tl::unexpected<Problems> shelf_problem(const store::Trouble& t) {
  if (t.code == "store_conflict") return one("shelf_changed_elsewhere", {{"seq", std::to_string(t.seq)}});
  if (t.code == "store_id_taken") return one("entry_id_taken", {{"id", t.detail}});
  return one(t.code.c_str(), {{"detail", t.detail}});
}

int count_of(const wire::Json& document, const char* key) { return static_cast<int>(document[key].size()); }

// What a product is called: its code, and what words say.
std::string called(const wire::Json& product) {
  const std::string code = text_at(product, "code"), name = text_at(product, "name");
  if (code.empty()) return name.empty() ? text_at(product, "id") : name;
  return code + (name.empty() ? "" : " · " + name);
}

void compare(const wire::Json& before, const wire::Json& after, ShelfVersion& out) {
  std::map<std::string, const wire::Json*> old;
  for (const wire::Json& p : before["products"]) old[text_at(p, "id")] = &p;
  const auto tell = [](std::vector<std::string>& list, const wire::Json& product) {
    if (list.size() < Shelves::kToldMost) list.push_back(called(product));
  };
  for (const wire::Json& p : after["products"]) {
    const auto it = old.find(text_at(p, "id"));
    if (it == old.end()) {
      tell(out.added, p);
      continue;
    }
    if (*it->second != p) tell(out.changed, p);
    old.erase(it);
  }
  for (const auto& [id, product] : old) tell(out.removed, *product);
}

}  // namespace

Result<void> Shelves::ready() const {
  if (read_) return {};
  constexpr int page = 20;
  for (const char* kind : {kSaved, kTube, kChosen}) {
    std::int64_t after = 0;
    for (;;) {
      store::FactsAsked asked;
      asked.after = after, asked.kind = kind, asked.limit = page;
      const auto facts = world_.store->facts(asked);
      if (!facts) return shelf_problem(facts.error());
      for (const store::Fact& fact : *facts) {
        if (const auto taken = take(fact); !taken) return taken;
        after = fact.store_seq;
      }
      if (facts->size() < static_cast<std::size_t>(page)) break;
    }
  }
  read_ = true;
  return {};
}

Result<void> Shelves::take(const store::Fact& fact) const {
  const auto body = wire::parse(fact.body);
  if (!body) return one("store_damaged", {{"detail", "fact " + std::to_string(fact.store_seq)}});
  const std::string id = fact.stream.substr(fact.stream.find(':') + 1);
  if (fact.kind == kChosen) {
    chosen_ = text_at(*body, "shelf");
  } else if (fact.kind == kTube) {
    // Handed in again, an older fact takes nothing back.
    Kept& kept = shelves_[id];
    if (fact.store_seq <= kept.tubes_seq) return {};
    kept.tubes_seq = fact.store_seq;
    auto& empty = kept.empty;
    const std::string product = text_at(*body, "product");
    if (body->value("empty", false)) {
      empty.insert(product);
    } else {
      empty.erase(product);
    }
  } else {
    Kept& kept = shelves_[id];
    // Read again while it was being saved: known already.
    if (!kept.versions.empty() && kept.versions.back().seq >= fact.seq) return {};
    kept.title = text_at(*body, "title");
    kept.invented = body->value("invented", false);
    kept.versions.push_back({fact.seq, fact.store_seq, store::content_hash(fact.body), fact.id, fact.made_at,
                             count_of(*body, "ranges"), count_of(*body, "products")});
  }
  return {};
}

Result<Shelves::Found> Shelves::find(const std::string& name) const {
  if (name == kDemo) return Found{kDemo, nullptr};
  if (const auto read = ready(); !read) return tl::unexpected(read.error());
  const std::string& wanted = name.empty() ? chosen_ : name;
  if (wanted == kDemo) return Found{kDemo, nullptr};
  const std::size_t at = wanted.find('@');
  const auto shelf = shelves_.find(wanted.substr(0, at));
  if (shelf == shelves_.end() || shelf->second.versions.empty()) return one("shelf_not_found", {{"id", name}});
  const auto& versions = shelf->second.versions;
  if (at == std::string::npos) return Found{shelf->first, &versions.back()};
  const auto version = std::find_if(versions.rbegin(), versions.rend(),
                                    [&](const Version& v) { return v.hash == wanted.substr(at + 1); });
  if (version == versions.rend()) return one("shelf_not_found", {{"id", name}});
  return Found{shelf->first, &*version};
}

Result<wire::Json> Shelves::document_of(const std::string& id, const Version& version) const {
  store::FactsAsked asked;
  asked.after = version.store_seq - 1, asked.stream = stream_of(id), asked.limit = 1;
  const auto facts = world_.store->facts(asked);
  if (!facts) return shelf_problem(facts.error());
  if (facts->size() != 1 || facts->front().seq != version.seq)
    return one("store_damaged", {{"detail", "fact " + std::to_string(version.store_seq)}});
  return wire::parse(facts->front().body);
}

Result<std::shared_ptr<const Shelves::Known>> Shelves::known(const std::string& id, const Version& version) const {
  constexpr std::size_t most = 16;
  const std::string name = id + '@' + version.hash;
  if (const auto it = cache_.find(name); it != cache_.end()) return it->second;
  return document_of(id, version)
      .and_then([](const wire::Json& document) { return wire::read_shelf_document(document); })
      .map([&](wire::ShelfDocument document) {
        document.id = name;
        Shelf shelf = wire::shelf_of(document);
        if (check(shelf).empty()) line::complete(shelf), learn(shelf);
        if (cache_.size() >= most) cache_.clear();
        return cache_[name] = std::make_shared<const Known>(Known{std::move(document), std::move(shelf)});
      });
}

// A shelf by its name, and its id, without the tubes that are empty.
Result<Shelf> Shelves::today(const std::string& name, std::string& id) const {
  const std::lock_guard lock(mutex_);
  return find(name).and_then([&](const Found& found) -> Result<Shelf> {
    id = found.id;
    if (!found.version) return house_.demo;
    return known(found.id, *found.version).map([&](const std::shared_ptr<const Known>& version) {
      Shelf shelf = version->shelf;
      const auto& empty = shelves_.at(found.id).empty;
      for (Product& p : shelf.products)
        if (empty.contains(p.id)) p.stock_g = 0;
      return shelf;
    });
  });
}

wire::Sources Shelves::sources() const {
  wire::Sources out = house_.sources();
  out.shelf = [this](const std::string& name) -> std::optional<Shelf> {
    std::string id;
    auto shelf = today(name, id);
    if (!shelf) return std::nullopt;
    if (!left_) return std::move(*shelf);
    for (Product& p : shelf->products)
      if (const auto left = p.stock_g > 0 ? left_(id, p.id) : std::nullopt) p.stock_g = *left;
    return std::move(*shelf);
  };
  return out;
}

Result<wire::ShelfAnswer> Shelves::view(const std::string& name) const {
  std::string id;
  auto out = view_of(name, id);
  if (!out || !left_) return out;
  for (wire::ProductView& p : out->products)
    if (p.stock_g.value_or(1) > 0) {
      if (const auto left = left_(id, p.id)) p.stock_g = *left;
    }
  return out;
}

Result<wire::ShelfAnswer> Shelves::view_of(const std::string& name, std::string& id) const {
  const std::lock_guard lock(mutex_);
  return find(name).and_then([&](const Found& found) -> Result<wire::ShelfAnswer> {
    id = found.id;
    if (!found.version) return wire::view(house_.demo);
    return known(found.id, *found.version).map([&](const std::shared_ptr<const Known>& version) {
      wire::ShelfAnswer out = wire::view(version->document);
      const auto& empty = shelves_.at(found.id).empty;
      for (wire::ProductView& p : out.products)
        if (empty.contains(p.id)) p.stock_g = 0;
      return out;
    });
  });
}

ShelfSummary Shelves::summary_of(const std::string& id) const {
  ShelfSummary out{.id = id, .name = {}, .title = {}, .saved_at = {}};
  out.chosen = id == chosen_;
  if (id == kDemo) {
    out.name = kDemo, out.title = house_.demo.title, out.invented = true;
    out.ranges = static_cast<int>(house_.demo.ranges.size());
    out.products = static_cast<int>(house_.demo.products.size());
    return out;
  }
  const Kept& kept = shelves_.at(id);
  const Version& newest = kept.versions.back();
  out.seq = newest.seq, out.name = id + '@' + newest.hash, out.title = kept.title, out.saved_at = newest.saved_at;
  out.ranges = newest.ranges, out.products = newest.products, out.invented = kept.invented;
  return out;
}

Result<std::vector<ShelfSummary>> Shelves::list() const {
  const std::lock_guard lock(mutex_);
  if (const auto read = ready(); !read) return tl::unexpected(read.error());
  std::vector<ShelfSummary> out;
  for (const auto& [id, kept] : shelves_)
    if (!kept.versions.empty()) out.push_back(summary_of(id));
  std::sort(out.begin(), out.end(), [](const auto& a, const auto& b) { return a.saved_at > b.saved_at; });
  out.push_back(summary_of(kDemo));
  return out;
}

Result<SavedShelf> Shelves::answer(const std::string& id, const Version& version, wire::Json document) const {
  SavedShelf out{summary_of(id), version.entry, std::move(document), {}, {}};
  ShelfSummary& s = out.summary;
  s.seq = version.seq, s.name = id + '@' + version.hash, s.saved_at = version.saved_at;
  s.title = text_at(out.document, "title"), s.ranges = version.ranges, s.products = version.products;
  const auto& empty = shelves_.at(id).empty;
  for (const wire::Json& p : out.document["products"])
    if (empty.contains(text_at(p, "id"))) out.empty.push_back(text_at(p, "id"));
  const auto read = wire::read_shelf_document(out.document);
  if (!read) return tl::unexpected(read.error());
  out.gaps = wire::gaps(*read);
  return out;
}

Result<SavedShelf> Shelves::open_shelf(const std::string& name) const {
  const std::lock_guard lock(mutex_);
  if (const auto read = ready(); !read) return tl::unexpected(read.error());
  return find(name).and_then([&](const Found& found) -> Result<SavedShelf> {
    if (!found.version) return SavedShelf{summary_of(kDemo), {}, house_.demo_document, {}, {}};
    return document_of(found.id, *found.version).and_then([&](wire::Json document) {
      return answer(found.id, *found.version, std::move(document));
    });
  });
}

Result<std::vector<ShelfVersion>> Shelves::history(const std::string& id) const {
  const std::lock_guard lock(mutex_);
  if (id == kDemo) return std::vector<ShelfVersion>{};
  const auto found = find(id.substr(0, id.find('@')));
  if (!found) return tl::unexpected(found.error());
  std::vector<ShelfVersion> out;
  wire::Json before{{"products", wire::Json::array()}};
  for (const Version& v : shelves_.at(found->id).versions) {
    auto document = document_of(found->id, v);
    if (!document) return tl::unexpected(document.error());
    ShelfVersion told;
    told.seq = v.seq, told.name = found->id + '@' + v.hash, told.saved_at = v.saved_at;
    told.ranges = v.ranges, told.products = v.products;
    compare(before, *document, told);
    out.push_back(std::move(told));
    before = std::move(*document);
  }
  std::reverse(out.begin(), out.end());
  return out;
}

Result<SavedShelf> Shelves::save(const std::string& id, std::int64_t seen_seq, const wire::Json& document,
                                 const std::string& entry) {
  const auto read = wire::read_shelf_document(document);
  if (!read) return tl::unexpected(read.error());
  if (Problems problems = wire::check_shelf(*read); !problems.empty()) return tl::unexpected(std::move(problems));
  wire::Json kept{{"id", id}};
  for (const auto& [key, value] : document.items())
    if (key != "id") kept[key] = value;
  store::NewFact fact;
  fact.id = entry, fact.stream = stream_of(id), fact.after_seq = seen_seq, fact.made_at = world_.now();
  fact.kind = kSaved, fact.body = wire::print(kept);
  const auto written = world_.store->append(fact);
  if (!written) return shelf_problem(written.error());
  if (const auto taken = take(*written); !taken) return tl::unexpected(taken.error());
  const auto& versions = shelves_.at(id).versions;
  const auto version =
      std::find_if(versions.begin(), versions.end(), [&](const Version& v) { return v.seq == written->seq; });
  return answer(id, *version, std::move(kept));
}

Result<SavedShelf> Shelves::save_new(const wire::Json& document, const std::string& entry, const std::string& id) {
  const std::lock_guard lock(mutex_);
  if (const auto read = ready(); !read) return tl::unexpected(read.error());
  return id_for(world_, entry).and_then([&](const std::string& entry_id) -> Result<SavedShelf> {
    constexpr std::string_view signs = "0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz-_";
    constexpr std::size_t longest = 40;
    const std::string own = id.empty() ? "s-" + entry_id.substr(0, longest - 2) : id;
    if (own.size() > longest || own.find_first_not_of(signs) != std::string::npos || own == kDemo)
      return one("not_an_id", {{"id", own}});
    auto saved = save(own, 0, document, entry_id);
    if (!saved && saved.error().front().code == "shelf_changed_elsewhere") return one("shelf_id_taken", {{"id", own}});
    return saved;
  });
}

Result<SavedShelf> Shelves::save_change(const std::string& id, std::int64_t seen_seq, const wire::Json& document,
                                        const std::string& entry) {
  const std::lock_guard lock(mutex_);
  if (id == kDemo) return one("shelf_is_demo");
  if (const auto found = find(id.substr(0, id.find('@'))); !found) return tl::unexpected(found.error());
  return id_for(world_, entry).and_then([&](const std::string& entry_id) {
    return save(id.substr(0, id.find('@')), seen_seq, document, entry_id);
  });
}

Result<SavedShelf> Shelves::set_empty(const std::string& id, const std::string& product, bool empty,
                                      const std::string& entry) {
  const std::lock_guard lock(mutex_);
  if (id == kDemo) return one("shelf_is_demo");
  const auto found = find(id.substr(0, id.find('@')));
  if (!found) return tl::unexpected(found.error());
  return document_of(found->id, *found->version).and_then([&](wire::Json document) -> Result<SavedShelf> {
    const auto& products = document["products"];
    const bool there =
        std::any_of(products.begin(), products.end(), [&](const wire::Json& p) { return text_at(p, "id") == product; });
    if (!there) return one("unknown_product", {{"product", product}});
    const auto entry_id = id_for(world_, entry);
    if (!entry_id) return tl::unexpected(entry_id.error());
    store::NewFact fact;
    fact.id = *entry_id, fact.stream = tubes_of(found->id), fact.after_seq = store::NewFact::at_the_end;
    fact.made_at = world_.now(), fact.kind = kTube;
    fact.body = wire::print({{"product", product}, {"empty", empty}});
    const auto written = world_.store->append(fact);
    if (!written) return shelf_problem(written.error());
    if (const auto taken = take(*written); !taken) return tl::unexpected(taken.error());
    return answer(found->id, *found->version, std::move(document));
  });
}

Result<void> Shelves::choose(const std::string& id) {
  const std::lock_guard lock(mutex_);
  const auto found = find(id.empty() ? kDemo : id.substr(0, id.find('@')));
  if (!found) return tl::unexpected(found.error());
  if (const auto read = ready(); !read) return read;
  store::NewFact fact;
  fact.id = world_.new_id(), fact.stream = kChoices, fact.after_seq = store::NewFact::at_the_end;
  fact.made_at = world_.now(), fact.kind = kChosen, fact.body = wire::print({{"shelf", found->id}});
  const auto written = world_.store->append(fact);
  if (!written) return shelf_problem(written.error());
  return take(*written);
}

}  // namespace strandline::salon
