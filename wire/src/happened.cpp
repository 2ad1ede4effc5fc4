#include "strandline/wire/happened.h"

#include <algorithm>

#include "strandline/wire/happened_fields.h"

namespace strandline::wire {

namespace {

bool blank(const std::string& text) { return text.find_first_not_of(' ') == std::string::npos; }

void said(const std::string& text, const char* key, const At& at) {
  if (blank(text)) at.key(key).problem("left_empty", {{"key", key}});
}

// What the codec cannot say of one value alone.
void look(const GateCorrected& g, const At& at) { said(g.why, "why", at); }
void look(const AgreeWithdrawn& a, const At& at) { said(a.why, "why", at); }
void look(const Agreed& a, const At& at) {
  if (a.price_to < a.price_from) {
    at.key("price_to")
        .problem("price_range", {{"from", number_text(a.price_from)}, {"until", number_text(a.price_to)}});
  }
  const bool drawn = std::any_of(a.signature.strokes.begin(), a.signature.strokes.end(),
                                 [](const std::vector<double>& stroke) { return stroke.size() >= 4; });
  if (!drawn && blank(a.signature.typed)) at.key("signature").problem("not_signed");
  for (std::size_t i = 0; i < a.signature.strokes.size(); ++i) {
    const std::size_t numbers = a.signature.strokes[i].size();
    if (numbers % 2 == 0) continue;
    at.key("signature")
        .key("strokes")
        .item(i)
        .problem("wrong_count", {{"expected", std::to_string(numbers + 1)}, {"found", std::to_string(numbers)}});
  }
}
void look(const IncidentRecord& i, const At& at) {
  said(i.signs, "signs", at);
  said(i.product, "product", at);
  said(i.onset, "onset", at);
}
void look(const Rebooked& r, const At& at) {
  if (!r.from.empty() && !r.until.empty() && r.until < r.from)
    at.key("until").problem("date_range", {{"from", r.from}, {"until", r.until}});
}
void look(const Refused& r, const At& at) {
  if (r.reasons.empty()) at.key("reasons").problem("left_empty", {{"key", "reasons"}});
  said(r.words, "words", at);
}
void look(const HandedOver& h, const At& at) {
  said(h.to, "to", at);
  said(h.next, "next", at);
}
void look(const Briefed& b, const At& at) {
  said(b.to, "to", at);
  said(b.task, "task", at);
}
void look(const TestMade& m, const At& at) {
  said(m.site, "site", at);
  said(m.name, "name", at);
}
void look(const Consented& c, const At& at) {
  said(c.words, "words", at);
  said(c.name, "name", at);
}
void look(const Advised& a, const At& at) { said(a.reason, "reason", at); }
void look(const SignedOff& s, const At& at) { said(s.name, "name", at); }
// Nothing is paid back here: what is taken is at most what was asked.
void look(const Paid& p, const At& at) {
  double due = -p.deposit;
  for (const PaidLine& line : p.lines) due += line.price;
  constexpr double half_a_cent = 0.005;
  if (p.paid > std::max(due, 0.0) + half_a_cent)
    at.key("paid").problem("paid_more", {{"due", number_text(std::max(due, 0.0))}, {"paid", number_text(p.paid)}});
}
void look(const Photo& p, const At& at) {
  said(p.consent, "consent", at);
  const auto bytes = bytes_of_base64(p.jpeg);
  const std::string why = bytes ? photo_trouble(*bytes) : "not_base64";
  if (!why.empty()) at.key("jpeg").problem("photo_refused", {{"why", why}});
}
template <class T>
void look(const T&, const At&) {}

// Calls f(kind) for the one with this word; false when there is none.
template <class F>
bool with_kind(std::string_view word, F&& f) {
  return std::apply([&](const auto&... each) { return ((each.kind == word && (f(each), true)) || ...); },
                    happened_kinds);
}

}  // namespace

std::optional<int> version_of(std::string_view kind) {
  std::optional<int> out;
  with_kind(kind, [&](const auto& k) { out = k.version; });
  return out;
}

bool before_the_end(std::string_view kind) {
  bool out = false;
  with_kind(kind, [&](const auto& k) { out = k.before_the_end; });
  return out;
}

Problems check_happened(std::string_view kind, const Json& body, const std::string& path) {
  Problems problems;
  const At at(problems, path);
  const bool known = with_kind(kind, [&]<class T>(const Kind<T>&) {
    T read{};
    decode(body, read, at.key("body"));
    if (problems.empty()) look(read, at.key("body"));
  });
  if (!known) at.key("kind").problem("unknown_fact_kind", {{"kind", std::string(kind)}});
  return problems;
}

}  // namespace strandline::wire
