#include "strandline/wire/document.h"

#include <algorithm>

#include "strandline/wire/encode.h"
#include "strandline/wire/visit_fields.h"

namespace strandline::wire {

namespace {

Policy taken(Policy policy) { return policy; }
Shelf taken(const ShelfDocument& document) { return shelf_of(document); }

// "demo", {"demo": true}, or the value itself.
template <class Ref>
void decode_ref(const Json& in, Ref& out, const At& at, const Rules& rules) {
  const std::string named(Special<Ref>::named);
  if (in.is_string()) return decode_text(in, out.name, at, rules);
  if (in.is_object() && in.size() == 1 && in.contains(named)) {
    if (in[named] == true) {
      out.name = named;
    } else {
      wrong_type(in[named], at.key(named), "true");
    }
    return;
  }
  typename Special<Ref>::Written written;
  decode(in, written, at);
  out.inlined = taken(std::move(written));
}

// A shelf that came whole is told as whole: what only people read has been left out of it.
Json written(const Policy& policy) { return encode(policy); }
Json written(const Shelf& shelf) {
  ShelfDocument out{shelf.id, shelf.title, shelf.currency, shelf.invented, shelf.ranges, {}};
  out.products.resize(shelf.products.size());
  for (std::size_t i = 0; i < shelf.products.size(); ++i) out.products[i].product = shelf.products[i];
  return encode(out);
}

template <class Ref>
Json encode_ref(const Ref& ref) {
  if (ref.inlined) return written(*ref.inlined);
  return ref.name.empty() ? std::string(Special<Ref>::named) : ref.name;
}

template <class T, class Ref>
void resolve(Ref& ref, T& out, const std::function<std::optional<T>(const std::string&)>& known, std::string_view key,
             Problems& problems) {
  if (ref.inlined) {
    out = std::move(*ref.inlined);
  } else if (std::optional<T> found = known ? known(ref.name) : std::nullopt) {
    out = std::move(*found);
  } else {
    const std::string nearest(Special<Ref>::named);
    problems.push_back({"unknown_name", pointer("", key), {{"name", ref.name}, {"nearest", nearest}}});
  }
}

template <class T>
Result<T> read_whole(const Json& document) {
  T out;
  Problems problems;
  decode(document, out, At(problems, ""));
  if (!problems.empty()) return tl::unexpected(std::move(problems));
  return out;
}

}  // namespace

void Special<ShelfRef>::decode(const Json& in, ShelfRef& out, const At& at, const Rules& rules) {
  decode_ref(in, out, at, rules);
}
void Special<PolicyRef>::decode(const Json& in, PolicyRef& out, const At& at, const Rules& rules) {
  decode_ref(in, out, at, rules);
}
Json Special<ShelfRef>::encode(const ShelfRef& ref) { return encode_ref(ref); }
Json Special<PolicyRef>::encode(const PolicyRef& ref) { return encode_ref(ref); }

Result<ReadVisit> read_visit(const Json& document, const Sources& sources) {
  VisitDocument d;
  Problems problems;
  decode(document, d, At(problems, ""));
  if (document.is_object() && document.contains("schema") && document["schema"].is_string() &&
      d.schema != kVisitSchema) {
    problems.insert(problems.begin(), {"unknown_schema", "/schema", {{"expected", std::string(kVisitSchema)}}});
  }
  ReadVisit out;
  Visit& v = out.visit;
  resolve(d.shelf, v.shelf, sources.shelf, "shelf", problems);
  resolve(d.policy, v.policy, sources.policy, "policy", problems);
  if (!problems.empty()) return tl::unexpected(std::move(problems));
  v.policy.formula.head_factor *= d.mix_factor;
  v.client = std::move(d.client);
  v.date = std::move(d.date);
  v.skin_test = std::move(d.skin_test);
  v.test = std::move(d.test);
  v.answers = std::move(d.answers);
  v.head = std::move(d.head);
  v.aims = std::move(d.aims);
  v.people = std::move(d.people);
  v.bowls = std::move(d.bowls);
  out.running = std::move(d.running);
  // What this visit has weighed already is its own.
  if (out.running) {
    for (const Addition& a : out.running->additions)
      for (Product& p : v.shelf.products)
        if (p.id == a.product) p.stock_g = std::min(kNotCounted, p.stock_g + a.grams);
  }
  out.options = d.options;
  return out;
}

namespace {

// "/steps/0/formula/range" and "/bowls/0/formula/range" are written "/bowls/0/range".
void place_in_bowl(std::string& path) {
  constexpr std::string_view steps = "/steps/", formula = "/formula";
  if (path.starts_with(steps)) path.replace(0, steps.size(), "/bowls/");
  if (!path.starts_with("/bowls/")) return;
  if (const std::size_t at = path.find(formula); at != std::string::npos) path.erase(at, formula.size());
}

// ".../populations/0/level" of a span in short is written ".../level".
void place_in_span(const Json& document, std::string& path) {
  const std::size_t at = path.find("/populations");
  if (at == std::string::npos || !path.starts_with("/head/areas/")) return;
  const Json::json_pointer span(path.substr(0, at));
  if (!document.contains(span) || document[span].contains("populations")) return;
  const std::string last = path.substr(path.rfind('/') + 1);
  const bool written = document[span].contains(last);
  path = path.substr(0, at) + (last == "share" ? "/white_percent" : written ? '/' + last : "");
}

}  // namespace

Problems place_in(const Json& document, Problems problems) {
  for (Problem& p : problems) {
    place_in_bowl(p.path);
    place_in_span(document, p.path);
  }
  return problems;
}

Result<ShelfDocument> read_shelf_document(const Json& document) { return read_whole<ShelfDocument>(document); }
Result<Shelf> read_shelf(const Json& document) { return read_shelf_document(document).map(shelf_of); }
Result<Policy> read_policy(const Json& document) { return read_whole<Policy>(document); }

}  // namespace strandline::wire
