#include <ostream>

#include "src/commands.h"
#include "strandline/wire/document.h"

namespace strandline::cli {

void add_schema(CLI::App& app, Session& session) {
  CLI::App* command = app.add_subcommand("schema", "JSON Schema of the visit document");
  command->callback([&session] { session.io.out << wire::print(wire::visit_schema(), true) << '\n'; });
}

}  // namespace strandline::cli
