#include "src/visit_command.h"

#include <algorithm>
#include <iterator>
#include <memory>
#include <ostream>

#include "src/print/problems.h"
#include "src/print/text.h"
#include "strandline/salon/knowledge.h"

namespace strandline::cli {

namespace {

bool outside_the_document(const Problems& problems) {
  for (const Problem& p : problems) {
    if (p.code == "cannot_read" || p.code == "not_a_file") return true;
  }
  return false;
}

bool stopped_by_rules(const Problems& problems) {
  return !problems.empty() &&
         std::all_of(problems.begin(), problems.end(), [](const Problem& p) { return p.code == "bowl_passes_rule"; });
}

}  // namespace

Result<std::string> read_text(const std::string& file, std::istream& in) {
  const std::size_t bytes_max = wire::TextLimits{}.bytes;
  if (file != "-") return salon::read_file(file, bytes_max);
  std::string text;
  char c;
  while (in.get(c)) {
    text += c;
    if (text.size() > bytes_max) break;
  }
  return text;
}

CLI::Validator between(double from, double to) {
  const std::string range = "[" + number(from) + " - " + number(to) + "]";
  return {[=](const std::string& text) {
            double value = 0;
            const bool read = CLI::detail::lexical_cast(text, value);
            // Written so that what is not a number is refused.
            return read && value >= from && value <= to ? "" : "Value " + text + " is not a number in " + range;
          },
          "FLOAT in " + range};
}

CLI::App* add_visit_command(CLI::App& app, Session& session, const char* name, const char* help,
                            std::function<int(const VisitFlags&, Session&)> work) {
  const auto flags = std::make_shared<VisitFlags>();
  CLI::App* command = app.add_subcommand(name, help);
  command->footer("FILE is a visit document; - reads it from standard input. Examples: knowledge/demo/visits/.\n" +
                  command->get_footer());
  command->add_option("FILE", flags->file, "visit document, - for standard input")->required();
  command->add_flag("--json", flags->json, "the answer as JSON");
  command->add_option("--light", flags->light, "the light that swatches are shown for")
      ->check(CLI::IsMember({"daylight", "salon", "evening", "tube"}));
  command->add_option("--shelf", flags->shelf, "shelf file instead of the demo shelf");
  command->add_option("--policy", flags->policy, "policy file instead of the house policy");
  command->add_option("--knowledge", flags->knowledge, "folder with demo/ and policy/");
  command->add_option("--colour", flags->colour, "swatches in 24-bit colour")
      ->check(CLI::IsMember({"auto", "always", "never"}));
  command->add_option("--threads", flags->threads, "threads for the search")->check(CLI::Range(1, 64));
  command->add_option("--seconds", flags->seconds, "a search stops after so long and tells its gap (default 120)")
      ->check(between(0, 3600));
  command->callback([flags, &session, work = std::move(work)] { session.exit_code = work(*flags, session); });
  return command;
}

std::optional<wire::ReadVisit> open_document(const VisitFlags& flags, Session& session) {
  salon::HouseFiles files{flags.shelf, flags.policy};
  if (!flags.knowledge.empty()) files.knowledge = flags.knowledge;
  const auto house = salon::open_house(files);
  if (!house) {
    session.exit_code = refuse(house.error(), flags, session);
    return std::nullopt;
  }
  auto asked = read_text(flags.file, session.io.in)
                   .and_then([](const std::string& text) { return wire::parse(text); })
                   .and_then([&](const wire::Json& json) { return salon::open_visit(json, house->sources()); });
  if (asked) {
    if (flags.seconds) asked->options.seconds = flags.seconds;
    return std::move(*asked);
  }
  session.exit_code = refuse(asked.error(), flags, session);
  return std::nullopt;
}

int refuse(const Problems& problems, const VisitFlags& flags, Session& session) {
  print_problems(problems, flags.file, session.io.err);
  if (flags.json) session.io.out << wire::print(wire::problems_json(problems), true) << '\n';
  if (stopped_by_rules(problems)) return stopped;
  return outside_the_document(problems) ? failed : refused;
}

Paint paint_for(const VisitFlags& flags, const Io& io) {
  return {flags.light, flags.colour == "always" || (flags.colour == "auto" && io.true_colour)};
}

}  // namespace strandline::cli
