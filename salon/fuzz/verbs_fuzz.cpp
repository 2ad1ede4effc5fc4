// Any document to every verb: answered or refused, and the answer can be printed. The first byte chooses the verb.
// How many each verb answered is told at the end.
#include <array>
#include <cstdint>
#include <cstdio>
#include <cstdlib>

#include "strandline/salon/knowledge.h"
#include "strandline/salon/verbs.h"

namespace {

constexpr std::array kVerbs{"assess", "aim",  "predict", "formulate", "schedule", "plan",       "reach",
                            "fade",   "grow", "what-if", "review",    "convert",  "substitute", "replan"};

struct Answered {
  std::array<long, kVerbs.size()> times{};
  ~Answered() {
    for (std::size_t i = 0; i < kVerbs.size(); ++i)
      std::fprintf(stderr, "%s answered %ld times\n", kVerbs[i], times[i]);
  }
};

}  // namespace

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
    (*document)["options"]["seconds"] = 0.02;
  }
  const std::size_t verb = data[0] % kVerbs.size();
  const auto answer =
      salon::answer(kVerbs[verb], *document, house->sources(), {}, {.range = "demi", .product = "permanent-6-gold"});
  if (answer ? wire::print(*answer).empty() : answer.error().empty()) std::abort();
  if (answer) ++answered.times[verb];
  return 0;
}
