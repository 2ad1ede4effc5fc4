#include "strandline/evidence.h"

#include <memory>
#include <ostream>
#include <string_view>

#include "src/commands.h"
#include "src/print/problems.h"
#include "src/print/table.h"
#include "src/print/text.h"
#include "strandline/salon/knowledge.h"

namespace strandline::cli {

namespace {

struct EvidenceFlags {
  bool json = false, campaigns = false;
  std::string knowledge;
};

wire::Json json_of(const std::vector<EvidenceRow>& rows) {
  wire::Json out = wire::Json::array();
  for (const EvidenceRow& r : rows) {
    out.push_back({{"id", r.id},
                   {"kind", code(r.kind)},
                   {"second_hand", r.second_hand},
                   {"range", {r.low, r.high}},
                   {"got", r.got},
                   {"source", r.source},
                   {"pass", r.pass}});
  }
  return out;
}

std::string_view words(EvidenceKind kind) {
  static constexpr std::string_view words[kEvidenceKinds] = {"outside value, not used in the fit",
                                                             "outside value, fitted", "common practice",
                                                             "own simulation", "law or identity"};
  return words[static_cast<int>(kind)];
}

struct Count {
  std::size_t rows = 0, hold = 0, second_hand = 0;
};

void print_rows(const std::vector<EvidenceRow>& rows, std::ostream& out) {
  Table table({"", "id", "kind", ">allowed from", ">to", ">got", "source"});
  Count counts[kEvidenceKinds];
  for (const EvidenceRow& r : rows) {
    Count& c = counts[static_cast<int>(r.kind)];
    ++c.rows, c.hold += r.pass, c.second_hand += r.second_hand;
    table.row({r.pass ? "pass" : "FAIL", r.id, std::string(words(r.kind)), number(r.low, 4), number(r.high, 4),
               number(r.got, 4), r.second_hand ? "second hand: " + r.source : r.source});
  }
  table.print(out);
  const Count& first = counts[static_cast<int>(EvidenceKind::outside_unused)];
  out << "\n  " << first.hold << " of " << first.rows << " outside values that no constant was fitted to hold ("
      << first.second_hand << " of them read second hand).\n"
      << "  No published colour of hair before and after a dye could be read: none is among them.\n";
  for (int k = 1; k < kEvidenceKinds; ++k)
    out << "  " << words(static_cast<EvidenceKind>(k)) << ": " << counts[k].hold << " of " << counts[k].rows
        << " hold.\n";
}

int show(const EvidenceFlags& flags, Session& session) {
  salon::HouseFiles files;
  if (!flags.knowledge.empty()) files.knowledge = flags.knowledge;
  const auto house = salon::open_house(files);
  if (!house) {
    print_problems(house.error(), files.knowledge.string(), session.io.err);
    return failed;
  }
  const std::vector<EvidenceRow> rows = flags.campaigns ? campaigns() : evidence(house->demo);
  if (flags.json) {
    session.io.out << wire::print(json_of(rows), true) << '\n';
  } else {
    print_rows(rows, session.io.out);
  }
  return done;
}

}  // namespace

void add_evidence(CLI::App& app, Session& session) {
  const auto flags = std::make_shared<EvidenceFlags>();
  CLI::App* command = app.add_subcommand("evidence", "what must hold, checked against this build; none hidden");
  command->add_flag("--json", flags->json, "the rows as JSON");
  command->add_flag("--campaigns", flags->campaigns, "whole simulated salons instead; half a minute and more");
  command->add_option("--knowledge", flags->knowledge, "folder with demo/ and policy/");
  command->callback([flags, &session] { session.exit_code = show(*flags, session); });
}

}  // namespace strandline::cli
