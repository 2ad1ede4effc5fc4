#include <memory>
#include <ostream>

#include "src/learned_commands.h"
#include "src/print/problems.h"
#include "src/print/table.h"
#include "src/print/text.h"
#include "src/visit_command.h"
#include "strandline/levels.h"
#include "strandline/salon/knowledge.h"
#include "strandline/wire/card.h"
#include "strandline/wire/measured.h"
#include "strandline/wire/picture.h"

namespace strandline::cli {

namespace {

struct MeasureFlags {
  std::string file, typed;
  bool json = false;
};

void show(const measured::File& file, std::ostream& out) {
  Table table({"name", ">level", "tone", ">L*", ">a*", ">b*", "from"});
  for (const measured::Sample& s : file.samples)
    table.row({printable(s.name), number(level_of_lightness(s.lab.l)), std::string(word(name_colour(s.lab).tone)),
               number(s.lab.l, 2), number(s.lab.a, 2), number(s.lab.b, 2),
               s.reflectance ? "its spectrum" : "its L*a*b*"});
  table.print(out);
  print_lines(file.notes, "", out);
}

int measure(const MeasureFlags& flags, Session& session) {
  const auto text = flags.typed.empty() ? read_text(flags.file, session.io.in) : Result<std::string>(flags.typed);
  if (!text) {
    print_problems(text.error(), flags.file, session.io.err);
    return failed;
  }
  auto file = flags.typed.empty() ? measured::read(*text) : measured::typed(*text).map([](const Lab& lab) {
    measured::File out;
    out.samples.push_back({"typed", 1, {}, lab});
    return out;
  });
  if (!file) {
    print_problems(file.error(), flags.typed.empty() ? flags.file : flags.typed, session.io.err);
    return refused;
  }
  if (flags.json)
    session.io.out << wire::print(wire::answer_json(*file), true) << '\n';
  else
    show(*file, session.io.out);
  return done;
}

struct PhotoFlags {
  std::string file, card;
  bool json = false;
};

void show(const wire::CardPhoto& photo, std::ostream& out) {
  if (photo.neighbours) {
    out << "Nobody measured this card, so nothing can be said in numbers. Most alike: patch "
        << photo.neighbours->nearest << ", then " << photo.neighbours->next << "; the strand is "
        << (photo.neighbours->lighter ? "lighter" : "darker") << " than " << photo.neighbours->nearest << ".\n";
    return;
  }
  const card::Measured& m = photo.measured;
  Table table({">level", "tone", ">L*", ">a*", ">b*", ">off by (dE00)", "most like", ">away (dE00)"});
  table.row({number(level_of_lightness(m.lab.l)), std::string(word(name_colour(m.lab).tone)), number(m.lab.l, 1),
             number(m.lab.a, 1), number(m.lab.b, 1), number(m.error, 1), m.nearest, number(m.to_nearest, 1)});
  table.print(out);
  if (!photo.by_spectra)
    out << "The card's file has L*a*b* alone: what its ink and hair differ by under this lamp is not taken out.\n";
}

int measure_photo(const PhotoFlags& flags, Session& session) {
  // A photo is larger than a document may be.
  const auto photo = flags.file == "-" ? read_text(flags.file, session.io.in)
                                       : salon::read_file(flags.file, wire::picture_file_bytes_max);
  const auto card = flags.card.empty() ? Result<std::string>() : read_text(flags.card, session.io.in);
  for (const auto* each : {&photo, &card})
    if (!*each) {
      print_problems(each->error(), each == &photo ? flags.file : flags.card, session.io.err);
      return failed;
    }
  const auto read = wire::read_card_photo(*photo, *card);
  if (!read) {
    print_problems(read.error(), flags.file, session.io.err);
    return refused;
  }
  if (flags.json)
    session.io.out << wire::print(wire::answer_json(*read), true) << '\n';
  else
    show(*read, session.io.out);
  return done;
}

void add_photo(CLI::App& command, Session& session) {
  const auto flags = std::make_shared<PhotoFlags>();
  CLI::App* photo = command.add_subcommand(
      "photo", "a strand from a photo of it in the window of the printed card (strandline measure card)");
  photo->add_option("file", flags->file, "JPEG, or binary PPM; - = standard input")->required();
  photo->add_option("--card", flags->card, "instrument's file of the card's patches; without it only a comparison");
  photo->add_flag("--json", flags->json, "the answer as JSON");
  photo->callback([flags, &session] { session.exit_code = measure_photo(*flags, session); });
  command.add_subcommand("card", "prints the card as SVG: print it at its size, without the printer's own corrections")
      ->callback([&session] { session.io.out << card::svg(); });
}

}  // namespace

void add_measure(CLI::App& app, Session& session) {
  const auto flags = std::make_shared<MeasureFlags>();
  CLI::App* command =
      app.add_subcommand("measure", "reads an instrument's file of swatches or strands, or typed L*a*b*");
  command->add_option("file", flags->file, "measurement file (ISO 28178 / CGATS.17, or a table), - = standard input");
  command->add_option("--typed", flags->typed, "L*a*b* (D65, 10°) by hand: \"54.2 8.1 19.6\"");
  command->add_flag("--json", flags->json, "the answer as JSON");
  add_photo(*command, session);
  command->callback([flags, command, &session] {
    if (!command->get_subcommands().empty()) return;
    if (flags->file.empty() == flags->typed.empty()) throw CLI::RequiredError("one of FILE and --typed");
    session.exit_code = measure(*flags, session);
  });
}

}  // namespace strandline::cli
