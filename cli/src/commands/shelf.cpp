#include <algorithm>
#include <memory>
#include <ostream>

#include "en/sentences.h"
#include "src/commands.h"
#include "src/print/problems.h"
#include "src/print/text.h"
#include "src/visit_command.h"
#include "strandline/salon/shelves.h"
#include "strandline/wire/measured.h"
#include "strandline/wire/shelf_table.h"

namespace strandline::cli {

namespace {

struct ShelfFlags {
  std::string db = "salon.sqlite", key, knowledge, file, id, range;
  std::vector<std::string> classes;
  std::optional<double> package_g;
  bool json = false, csv = false, yes = false;
};

int told(const Problems& problems, const std::string& where, Session& session, Exit code = refused) {
  print_problems(problems, where, session.io.err);
  return code;
}

Result<salon::House> house_of(const ShelfFlags& flags) {
  salon::HouseFiles files;
  if (!flags.knowledge.empty()) files.knowledge = flags.knowledge;
  return salon::open_house(files);
}

// Runs `work` with the shelves of the salon file.
template <class Work>
int with_shelves(const ShelfFlags& flags, Session& session, Work&& work) {
  const auto house = house_of(flags);
  if (!house) return told(house.error(), "the knowledge folder", session, failed);
  auto world = salon::real_world(flags.db, false, flags.key);
  if (!world) return told({{world.error().code, "", {{"detail", world.error().detail}}}}, "the salon", session, failed);
  salon::Shelves shelves(std::move(*world), *house);
  return work(shelves);
}

Result<wire::Json> read_shelf_file(const std::string& file, std::istream& in) {
  return read_text(file, in).and_then([](const std::string& text) { return wire::parse(text); });
}

// "code", name, level and tone, price and stock of each product, range by range.
void show(const wire::Json& document, const std::vector<std::string>& empty, std::ostream& out) {
  const auto text = [](const wire::Json& o, const char* key) {
    return o.contains(key) && o[key].is_string() ? o[key].get<std::string>() : std::string();
  };
  const auto list = [&](const std::string& range) {
    for (const wire::Json& p : document["products"]) {
      if (text(p, "range") != range) continue;
      out << "  " << printable(text(p, "code").empty() ? "-" : text(p, "code")) << "  " << printable(text(p, "name"))
          << "  (" << text(p, "id") << ')';
      if (std::find(empty.begin(), empty.end(), text(p, "id")) != empty.end()) out << "  empty";
      out << '\n';
    }
  };
  out << printable(text(document, "title")) << '\n';
  for (const wire::Json& r : document["ranges"]) {
    out << '\n'
        << printable(text(r, "maker").empty() ? "maker not named" : text(r, "maker")) << ", "
        << printable(text(r, "name")) << "  [" << text(r, "id") << ", " << text(r, "cls") << "]\n";
    list(text(r, "id"));
  }
  out << "\nWithout a range\n";
  list("");
}

void show_table(const wire::TableRead& read, std::ostream& out) {
  int taken = 0, not_taken = 0;
  for (const wire::TableLine& line : read.lines) {
    if (line.is == wire::TableLineIs::heading) continue;
    const bool ok = line.is != wire::TableLineIs::refused;
    (ok ? taken : not_taken)++;
    out << (ok ? "  " : "! ") << line.line << ": " << printable(line.text);
    if (line.is == wire::TableLineIs::changed) out << "  (changes what is there)";
    if (line.is == wire::TableLineIs::same) out << "  (there already)";
    out << '\n';
    print_lines(line.problems, "      ", out);
  }
  out << taken << " understood, " << not_taken << " not.\n";
}

int list(const ShelfFlags& flags, Session& session) {
  return with_shelves(flags, session, [&](const salon::Shelves& shelves) -> int {
    const auto all = shelves.list();
    if (!all) return told(all.error(), "the salon", session, failed);
    for (const salon::ShelfSummary& s : *all) {
      session.io.out << (s.chosen ? "* " : "  ") << s.id << "  " << printable(s.title) << "  " << s.ranges
                     << " ranges, " << s.products << " products";
      if (s.seq > 0) session.io.out << ", version " << s.seq << " of " << s.saved_at;
      session.io.out << '\n';
    }
    return done;
  });
}

int show_one(const ShelfFlags& flags, Session& session) {
  return with_shelves(flags, session, [&](const salon::Shelves& shelves) -> int {
    const auto shelf = shelves.open_shelf(flags.id);
    if (!shelf) return told(shelf.error(), flags.id, session);
    show(shelf->document, shelf->empty, session.io.out);
    if (!shelf->gaps.empty()) session.io.out << "\nStill missing:\n";
    print_lines(shelf->gaps, "", session.io.out);
    return done;
  });
}

int export_one(const ShelfFlags& flags, Session& session) {
  return with_shelves(flags, session, [&](const salon::Shelves& shelves) -> int {
    const auto shelf = shelves.open_shelf(flags.id);
    if (!shelf) return told(shelf.error(), flags.id, session);
    if (flags.csv) {
      session.io.out << wire::print_table(shelf->document, flags.range);
    } else {
      session.io.out << wire::print(shelf->document, true) << '\n';
    }
    return done;
  });
}

bool is_table(const std::string& file) {
  return file.ends_with(".csv") || file.ends_with(".tsv") || file.ends_with(".txt");
}

// A table into a range of a shelf that is there.
int import_table(const ShelfFlags& flags, Session& session) {
  return with_shelves(flags, session, [&](salon::Shelves& shelves) -> int {
    const auto text = read_text(flags.file, session.io.in);
    if (!text) return told(text.error(), flags.file, session, failed);
    const auto shelf = shelves.open_shelf(flags.id);
    if (!shelf) return told(shelf.error(), flags.id, session);
    const auto read = wire::read_table({*text, flags.range, flags.package_g, {}}, shelf->document);
    if (!read) return told(read.error(), flags.file, session);
    show_table(*read, session.io.out);
    if (!flags.yes) {
      session.io.out << "Nothing was kept. Say --yes to keep what was understood.\n";
      return done;
    }
    const auto saved = shelves.save_change(shelf->summary.id, shelf->summary.seq, read->document);
    if (!saved) return told(saved.error(), flags.file, session);
    session.io.out << "Kept as " << saved->summary.name << '\n';
    return done;
  });
}

// Measured swatches into a range of a shelf that is there; the rest of the line follows them.
int import_swatches(const ShelfFlags& flags, Session& session) {
  return with_shelves(flags, session, [&](salon::Shelves& shelves) -> int {
    const auto text = read_text(flags.file, session.io.in);
    if (!text) return told(text.error(), flags.file, session, failed);
    const auto shelf = shelves.open_shelf(flags.id);
    if (!shelf) return told(shelf.error(), flags.id, session);
    const auto read = wire::answer_swatches({{"document", shelf->document}, {"range", flags.range}, {"text", *text}});
    if (!read) return told(read.error(), flags.file, session);
    const auto list = [&](const char* what, const wire::Json& names) {
      if (names.empty()) return;
      session.io.out << what;
      for (const wire::Json& name : names) session.io.out << ' ' << printable(name.get<std::string>());
      session.io.out << '\n';
    };
    list("Understood:", (*read)["matched"]);
    list("No single shade is called so:", (*read)["unmatched"]);
    list("These would say most of the others:", (*read)["next"]);
    if ((*read)["matched"].empty()) return done;
    if (!flags.yes) {
      session.io.out << "Nothing was kept. Say --yes to keep what was understood.\n";
      return done;
    }
    const auto saved = shelves.save_change(shelf->summary.id, shelf->summary.seq, (*read)["document"]);
    if (!saved) return told(saved.error(), flags.file, session);
    session.io.out << "Kept as " << saved->summary.name << '\n';
    return done;
  });
}

// A whole shelf: new, or the next version of one.
int import_document(const ShelfFlags& flags, Session& session) {
  const auto document = read_shelf_file(flags.file, session.io.in);
  if (!document) return told(document.error(), flags.file, session);
  return with_shelves(flags, session, [&](salon::Shelves& shelves) -> int {
    const auto there = shelves.open_shelf(flags.id.empty() ? "demo" : flags.id);
    const bool fresh = flags.id.empty() || (!there && there.error().front().code == "shelf_not_found");
    if (!fresh && !there) return told(there.error(), "the salon", session, failed);
    const auto saved = fresh ? shelves.save_new(*document, {}, flags.id)
                             : shelves.save_change(flags.id, there->summary.seq, *document);
    if (!saved) return told(saved.error(), flags.file, session);
    session.io.out << "Kept as " << saved->summary.name << '\n';
    print_lines(saved->gaps, "", session.io.out);
    return done;
  });
}

int check_file(const ShelfFlags& flags, Session& session) {
  const auto read = read_shelf_file(flags.file, session.io.in).and_then(wire::read_shelf_document);
  if (!read) return told(read.error(), flags.file, session);
  const Problems problems = wire::check_shelf(*read);
  if (!problems.empty()) return told(problems, flags.file, session);
  session.io.out << read->ranges.size() << " ranges, " << read->products.size() << " products: nothing wrong.\n";
  print_lines(wire::gaps(*read), "", session.io.out);
  return done;
}

// A shelf of no maker with these classes, to be filled in.
int print_template(const ShelfFlags& flags, Session& session) {
  const auto house = house_of(flags);
  if (!house) return told(house.error(), "the knowledge folder", session, failed);
  wire::Json out = house->classes;
  const auto wanted = [&](const std::string& range) {
    return flags.classes.empty() || std::find(flags.classes.begin(), flags.classes.end(), range) != flags.classes.end();
  };
  for (const std::string& name : flags.classes) {
    const auto& all = house->classes["ranges"];
    if (std::none_of(all.begin(), all.end(), [&](const wire::Json& r) { return r["id"] == name; }))
      return told({{"unknown_range", "", {{"range", name}}}}, "the classes", session);
  }
  for (const char* key : {"ranges", "products"}) {
    wire::Json kept = wire::Json::array();
    for (const wire::Json& each : out[key]) {
      const std::string range = key == std::string("ranges") ? each["id"].get<std::string>() : each.value("range", "");
      if (range.empty() || wanted(range)) kept.push_back(each);
    }
    out[key] = std::move(kept);
  }
  session.io.out << wire::print(out, true) << '\n';
  return done;
}

}  // namespace

void add_shelf(CLI::App& app, Session& session) {
  const auto flags = std::make_shared<ShelfFlags>();
  CLI::App* shelf =
      app.add_subcommand("shelf", "the salon's own shelves: list, show, import, swatches, export, check, template");
  shelf->require_subcommand(1);
  const auto command = [&](const char* name, const char* help, int (*work)(const ShelfFlags&, Session&), bool file) {
    CLI::App* c = shelf->add_subcommand(name, help);
    if (file) {
      c->add_option("--db,--store", flags->db, "salon file; not while it is served");
      c->add_option("--key", flags->key, "key file, beside the salon file unless said");
    }
    c->add_option("--knowledge", flags->knowledge, "folder with demo/, policy/ and shelf/");
    c->callback([flags, work, &session] { session.exit_code = work(*flags, session); });
    return c;
  };
  command("list", "every shelf; * is the one new visits plan on", list, true);
  command("show", "what stands on a shelf", show_one, true)
      ->add_option("SHELF", flags->id, "id, or ID@HASH of a version");
  CLI::App* out = command("export", "a shelf as a document, or a range of it as CSV", export_one, true);
  out->add_option("SHELF", flags->id, "id, or ID@HASH of a version");
  out->add_flag("--csv", flags->csv, "one range as CSV");
  out->add_option("--range", flags->range, "id of the range; nothing = products without one");
  CLI::App* in = command(
      "import", "a shelf document, or a list of shades into a range",
      [](const ShelfFlags& f, Session& s) {
        return is_table(f.file) || !f.range.empty() ? import_table(f, s) : import_document(f, s);
      },
      true);
  in->add_option("FILE", flags->file, "shelf document, or .csv, .tsv or .txt; - for standard input")->required();
  in->add_option("--into", flags->id, "id of the shelf; nothing = a new one");
  in->add_option("--range", flags->range, "range of the list; nothing = developers");
  in->add_option("--package", flags->package_g, "grams of a package where the list says none")->check(between(0, 1e5));
  in->add_flag("--yes", flags->yes, "keep what was understood of a list");
  CLI::App* swatches =
      command("swatches", "measured swatches into a range: the line from few of them", import_swatches, true);
  swatches->add_option("FILE", flags->file, "instrument's file, or a table of L*a*b*; - for standard input")
      ->required();
  swatches->add_option("--into", flags->id, "id of the shelf")->required();
  swatches->add_option("--range", flags->range, "id of the range")->required();
  swatches->add_flag("--yes", flags->yes, "keep what was understood");
  command("check", "everything that is wrong with a shelf document", check_file, false)
      ->add_option("FILE", flags->file, "shelf document, - for standard input")
      ->required();
  command("template", "classes of products as they are commonly used, to be filled in", print_template, false)
      ->add_option("CLASS", flags->classes, "which: permanent, demi, …; nothing = all");
}

}  // namespace strandline::cli
