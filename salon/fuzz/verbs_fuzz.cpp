// Any document to every verb: answered or refused, and the answer can be printed. The first byte chooses the verb.
// Documents are mostly changed value by value, so that they are still documents. How many each verb answered is told at
// the end.
#include <algorithm>
#include <array>
#include <cstdint>
#include <cstdio>
#include <cstdlib>
#include <random>
#include <vector>

#include "strandline/salon/knowledge.h"
#include "strandline/salon/verbs.h"

namespace {

namespace wire = strandline::wire;

constexpr std::array kVerbs{"assess", "aim",  "predict", "formulate", "schedule", "plan",       "reach",
                            "fade",   "grow", "what-if", "review",    "convert",  "substitute", "replan"};

struct Answered {
  std::array<long, kVerbs.size()> times{};
  ~Answered() {
    for (std::size_t i = 0; i < kVerbs.size(); ++i)
      std::fprintf(stderr, "%s answered %ld times\n", kVerbs[i], times[i]);
  }
};

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
    value = value.is_number_integer() ? wire::Json(static_cast<std::int64_t>(changed)) : wire::Json(changed);
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
  auto document = wire::parse(std::string_view(reinterpret_cast<const char*>(data) + 1, size > 0 ? size - 1 : 0));
  if (!document || random() % 8 == 0) return LLVMFuzzerMutate(data, size, most);
  std::vector<wire::Json*> all;
  collect(*document, all);
  const wire::Json other = *all[random() % all.size()];
  change(*all[random() % all.size()], other, random);
  const std::string text = document->dump();
  if (text.size() + 1 > most) return LLVMFuzzerMutate(data, size, most);
  if (random() % 8 == 0) data[0] = static_cast<std::uint8_t>(random());
  std::copy(text.begin(), text.end(), data + 1);
  return text.size() + 1;
}

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  using namespace strandline;
  static Answered answered;
  static const auto house = salon::open_house({});
  if (!house) std::abort();
  if (size == 0) return 0;
  auto document = wire::parse(std::string_view(reinterpret_cast<const char*>(data) + 1, size - 1));
  if (!document) return 0;
  // Small work: what is tried here is whether a verb holds, not how long it may take.
  if (document->is_object() && (!document->contains("options") || (*document)["options"].is_object())) {
    (*document)["options"]["scenarios"] = 1;
    (*document)["options"]["seconds"] = 0.1;
  }
  const std::size_t verb = data[0] % kVerbs.size();
  const auto answer =
      salon::answer(kVerbs[verb], *document, house->sources(), {}, {.range = "demi", .product = "permanent-6-gold"});
  if (answer ? wire::print(*answer).empty() : answer.error().empty()) std::abort();
  if (answer) ++answered.times[verb];
  return 0;
}
