#include <ostream>

#include "src/commands.h"

namespace strandline::cli {

void add_version(CLI::App& app, Session& session) {
  app.add_subcommand("version", "the version of this program")->callback([&session] {
    session.io.out << "strandline " << STRANDLINE_VERSION << '\n';
  });
}

}  // namespace strandline::cli
