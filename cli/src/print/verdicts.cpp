#include "src/print/verdicts.h"

#include <ostream>

#include "en/sentences.h"
#include "src/print/text.h"
#include "strandline/wire/answer_fields.h"

namespace strandline::cli {
namespace {

// The words of these codes that have a sentence, in one line.
std::string told(const std::vector<std::string>& codes, const std::string& kind, const wire::Params& figures) {
  std::string out;
  for (const std::string& code : codes) out += ' ' + en::say({kind + code, "", figures});
  return out;
}

std::string listed(const std::vector<std::string>& words) {
  std::string out;
  for (const std::string& word : words) out += (out.empty() ? "" : ", ") + std::string(en::label(word));
  return out;
}

void print_verdict(const wire::VerdictView& v, std::ostream& out) {
  wire::Params params = v.figures;
  if (!v.bowl.empty()) params["bowl"] = v.bowl;
  out << "  - " << (v.bowl.empty() ? "" : "Bowl " + printable(v.bowl) + ": ")
      << printable(en::say({v.rule, "", params})) << " [" << en::label("says_" + std::string(wire::word_of(v.says)))
      << ": " << listed(v.classes);
  if (!v.zones.empty()) out << "; " << printable(v.zones.front());
  if (v.zones.size() > 1) out << " and " << v.zones.size() - 1 << " more";
  out << "]\n";
  if (!v.change.empty()) out << "   " << printable(told(v.change, "change_", params)) << '\n';
  if (!v.today.empty()) out << "    Today:" << printable(told(v.today, "today_", params)) << '\n';
  out << "    " << printable(v.rule + ", " + v.source) << '\n';
}

}  // namespace

void print_verdicts(const wire::VerdictsView& all, std::ostream& out) {
  if (all.go == Go::stopped)
    out << "\n  Stopped. Nothing is mixed as asked; what was answered wrongly is answered again, "
           "nothing else opens it.\n";
  if (all.go == Go::restricted) out << "\n  Restricted\n";
  for (const wire::VerdictView& v : all.verdicts)
    if (v.says != Says::say) print_verdict(v, out);
}

}  // namespace strandline::cli
