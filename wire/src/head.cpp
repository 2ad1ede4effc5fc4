#include "strandline/wire/encode.h"
#include "strandline/wire/head_fields.h"

namespace strandline::wire {

namespace {

constexpr double hundred_percent = 100;

Population pigmented(const Shorthand& s) {
  Population p;
  p.name = "pigmented";
  if (s.level) p.level = *s.level;
  p.tone = s.tone.value_or(Tone::natural);
  p.origin = s.origin.value_or(ColourOrigin::natural);
  p.natural_level = s.natural_level;
  return p;
}

std::vector<Population> expand(const Shorthand& s) {
  std::vector<Population> out{pigmented(s)};
  if (!s.white_percent || s.white_percent->value <= 0) return out;
  Population white;
  white.name = "white";
  white.kind = FibreKind::white;
  white.share = {s.white_percent->value / hundred_percent, s.white_percent->sd / hundred_percent};
  // What is not white is pigmented: the two shares move together, so the doubt belongs to one of them.
  out.front().share = {1 - white.share.value, white.share.sd};
  out.push_back(white);
  if (out.front().share.value <= 0) out.erase(out.begin());
  return out;
}

}  // namespace

void Special<Span>::decode(const Json& in, Span& out, const At& at, const Rules&) {
  SpanDocument document;
  decode_record(in, document, at);
  out = std::move(document.span);
  if (!in.is_object()) return;
  const Shorthand& s = document.shorthand;
  const bool listed = in.contains("populations");
  const bool in_short = in.contains("level") || in.contains("tone") || in.contains("white_percent") ||
                        in.contains("origin") || in.contains("natural_level");
  if (listed && in_short) return at.problem("populations_and_shorthand");
  if (listed) return;
  const bool all_white = s.white_percent && s.white_percent->value >= hundred_percent;
  if (!in.contains("level") && !all_white) return at.problem("missing_key", {{"key", "level"}});
  out.populations = expand(s);
}

Json Special<Span>::encode(const Span& span) {
  Json out = Json::object();
  encode_members(span, out);
  return out;
}

}  // namespace strandline::wire
