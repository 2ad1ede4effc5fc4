#include "strandline/evidence.h"

#include <memory>
#include <ostream>

#include "src/commands.h"
#include "src/print/problems.h"
#include "src/print/table.h"
#include "src/print/text.h"
#include "strandline/salon/knowledge.h"

namespace strandline::cli {

namespace {

struct EvidenceFlags {
  bool json = false;
  std::string knowledge;
};

wire::Json json_of(const std::vector<EvidenceRow>& rows) {
  wire::Json out = wire::Json::array();
  for (const EvidenceRow& r : rows) {
    out.push_back({{"id", r.id},
                   {"expected", r.expected},
                   {"got", r.got},
                   {"tolerance", r.tolerance},
                   {"source", r.source},
                   {"pass", r.pass}});
  }
  return out;
}

void print_rows(const std::vector<EvidenceRow>& rows, std::ostream& out) {
  Table table({"", "id", ">expected", ">got", ">tolerance", "source"});
  std::size_t passed = 0;
  for (const EvidenceRow& r : rows) {
    passed += r.pass;
    table.row(
        {r.pass ? "pass" : "FAIL", r.id, number(r.expected, 4), number(r.got, 4), number(r.tolerance, 4), r.source});
  }
  table.print(out);
  out << "\n  " << passed << " of " << rows.size() << " rows hold.\n";
}

int show(const EvidenceFlags& flags, Session& session) {
  salon::HouseFiles files;
  if (!flags.knowledge.empty()) files.knowledge = flags.knowledge;
  const auto house = salon::open_house(files);
  if (!house) {
    print_problems(house.error(), files.knowledge.string(), session.io.err);
    return failed;
  }
  const std::vector<EvidenceRow> rows = evidence(house->demo);
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
  command->add_option("--knowledge", flags->knowledge, "folder with demo/ and policy/");
  command->callback([flags, &session] { session.exit_code = show(*flags, session); });
}

}  // namespace strandline::cli
