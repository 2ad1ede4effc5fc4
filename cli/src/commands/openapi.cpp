#include "strandline/wire/openapi.h"

#include <ostream>

#include "src/commands.h"

namespace strandline::cli {

void add_openapi(CLI::App& app, Session& session) {
  CLI::App* command = app.add_subcommand("openapi", "OpenAPI description of the HTTP interface");
  command->callback([&session] { session.io.out << wire::print(wire::openapi(STRANDLINE_VERSION), true) << '\n'; });
}

}  // namespace strandline::cli
