// Any document to every verb: answered or refused, and the answer can be printed. The first line names the verb.
// Documents are mostly changed value by value, so that they are still documents. How many each verb answered is told at
// the end.
#include <algorithm>
#include <array>
#include <cstdint>
#include <cstdio>
#include <cstdlib>
#include <random>
#include <string_view>
#include <utility>
#include <vector>

#include "strandline/salon/knowledge.h"
#include "strandline/salon/verbs.h"

namespace {

namespace wire = strandline::wire;

constexpr std::array<std::string_view, 14> kVerbs{"assess", "aim",     "predict",    "formulate", "schedule",
                                                  "plan",   "reach",   "fade",       "grow",      "what-if",
                                                  "review", "convert", "substitute", "replan"};

struct Answered {
  std::array<long, kVerbs.size()> times{};
  ~Answered() {
    for (std::size_t i = 0; i < kVerbs.size(); ++i)
      std::fprintf(stderr, "%s answered %ld times\n", kVerbs[i].data(), times[i]);
  }
};

// The verb that the first line names, kVerbs.size() = none, and the rest.
std::pair<std::size_t, std::string_view> parts(const std::uint8_t* data, std::size_t size) {
  const std::string_view all(reinterpret_cast<const char*>(data), size);
  const std::size_t line = all.find('\n');
  if (line == all.npos) return {kVerbs.size(), ""};
  const auto* verb = std::find(kVerbs.begin(), kVerbs.end(), all.substr(0, line));
  return {static_cast<std::size_t>(verb - kVerbs.begin()), all.substr(line + 1)};
}

void collect(wire::Json& value, std::vector<wire::Json*>& all) {
  all.push_back(&value);
  if (value.is_structured())
    for (wire::Json& part : value) collect(part, all);
}

void change(wire::Json& value, const wire::Json& other, std::minstd_rand& random) {
  constexpr std::array kFactors{0.0, -1.0, 0.5, 0.9, 1.1, 2.0};
  if (value.is_number() && random() % 4 != 0) {
    const double changed =
        value.get<double>() * kFactors[random() % kFactors.size()] + static_cast<double>(random() % 2);
    value = value.is_number_integer() ? wire::Json(static_cast<std::int64_t>(std::clamp(changed, -1e15, 1e15)))
                                      : wire::Json(changed);
  } else if (value.is_boolean()) {
    value = !value.get<bool>();
  } else if (value.is_structured() && !value.empty() && random() % 2 == 0) {
    value.erase(std::next(value.begin(), static_cast<std::ptrdiff_t>(random() % value.size())));
  } else if (value.is_array()) {
    value.push_back(value.empty() ? other : wire::Json(value[random() % value.size()]));
  } else {
    value = other;
  }
}

}  // namespace

extern "C" std::size_t LLVMFuzzerMutate(std::uint8_t* data, std::size_t size, std::size_t most);

extern "C" std::size_t LLVMFuzzerCustomMutator(std::uint8_t* data, std::size_t size, std::size_t most, unsigned seed) {
  std::minstd_rand random(seed);
  auto [verb, text_before] = parts(data, size);
  auto document = wire::parse(text_before);
  if (verb == kVerbs.size() || !document || random() % 8 == 0) return LLVMFuzzerMutate(data, size, most);
  std::vector<wire::Json*> all;
  collect(*document, all);
  const wire::Json other = *all[random() % all.size()];
  change(*all[random() % all.size()], other, random);
  if (random() % 8 == 0) verb = random() % kVerbs.size();
  const std::string text = std::string(kVerbs[verb]) + '\n' + document->dump();
  if (text.size() > most) return LLVMFuzzerMutate(data, size, most);
  std::copy(text.begin(), text.end(), data);
  return text.size();
}

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  using namespace strandline;
  static Answered answered;
  static const auto house = salon::open_house({});
  if (!house) std::abort();
  const auto [verb, text] = parts(data, size);
  auto document = wire::parse(text);
  if (verb == kVerbs.size() || !document) return 0;
  // Small work: what is tried here is whether a verb holds, not how long it may take.
  if (document->is_object() && (!document->contains("options") || (*document)["options"].is_object())) {
    (*document)["options"]["scenarios"] = 1;
    (*document)["options"]["seconds"] = 0.1;
  }
  const auto answer =
      salon::answer(kVerbs[verb], *document, house->sources(), {}, {.range = "demi", .product = "permanent-6-gold"});
  if (answer ? wire::print(*answer).empty() : answer.error().empty()) std::abort();
  if (answer) ++answered.times[verb];
  return 0;
}
