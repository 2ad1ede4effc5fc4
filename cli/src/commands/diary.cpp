#include "strandline/salon/diary.h"

#include <istream>
#include <iterator>
#include <memory>
#include <ostream>

#include "src/diary_command.h"
#include "src/print/problems.h"
#include "src/print/text.h"
#include "src/visit_command.h"
#include "strandline/salon/clients.h"
#include "strandline/salon/knowledge.h"
#include "strandline/wire/diary_fields.h"
#include "strandline/wire/encode.h"

namespace strandline::cli {

namespace {

struct DiaryFlags {
  std::string db = "salon.sqlite", key, knowledge, from, until, with, id, file, day;
  int days = 7, minutes = 0;
  bool json = false, beside = false;
};

struct Open {
  salon::World& world;
  salon::Diary& diary;
  Io& io;
};
using Act = std::function<Result<void>(const Open&, const DiaryFlags&)>;

constexpr std::int64_t s_per_day = 86400;
constexpr std::size_t civil_date = 10;

int run(const DiaryFlags& flags, Session& session, const Act& act) {
  const auto fail = [&](const Problems& problems, const char* where, Exit code) {
    print_problems(problems, where, session.io.err);
    return code;
  };
  salon::HouseFiles files;
  if (!flags.knowledge.empty()) files.knowledge = flags.knowledge;
  const auto house = salon::open_house(files);
  if (!house) return fail(house.error(), "the knowledge folder", failed);
  auto world = salon::real_world(flags.db, false, flags.key);
  if (!world) return fail({{world.error().code, "", {{"detail", world.error().detail}}}}, "the salon", failed);
  salon::Diary diary(*world, house->diary);
  const auto well = act({*world, diary, session.io}, flags);
  return well ? done : fail(well.error(), "the diary", refused);
}

void print(const salon::DiaryLine& line, std::ostream& out) {
  const wire::Booking& b = line.booking;
  out << b.starts_at << "  " << b.minutes << " min  " << wire::word_of(b.kind) << ", " << wire::word_of(b.state) << "  "
      << printable(b.client.empty() ? "no name" : b.client);
  if (!b.wish.empty()) out << ": " << printable(b.wish);
  out << "  [" << line.id << "]\n";
}

// Of the window that was asked for; from now on, so many days, where nothing was.
std::pair<std::string, std::string> window(const Open& salon, const DiaryFlags& flags) {
  const std::string from = flags.from.empty() ? salon.world.now() : flags.from;
  if (!flags.until.empty()) return {from, flags.until};
  return {from, wire::instant_of(wire::seconds_of(from).value_or(0) + flags.days * s_per_day)};
}

Result<void> list(const Open& salon, const DiaryFlags& flags) {
  const auto [from, until] = window(salon, flags);
  return salon.diary.between(from, until).map([&](const std::vector<salon::DiaryLine>& lines) {
    wire::Json all = wire::Json::array();
    for (const salon::DiaryLine& line : lines) {
      if (flags.json)
        all.push_back({{"id", line.id}, {"seq", line.seq}, {"booking", wire::encode(line.booking)}});
      else
        print(line, salon.io.out);
    }
    if (flags.json) salon.io.out << wire::print(all, true) << '\n';
  });
}

Result<void> free_starts(const Open& salon, const DiaryFlags& flags) {
  const auto [from, until] = window(salon, flags);
  return salon.diary.free_starts({from, until, static_cast<double>(flags.minutes), flags.with})
      .map([&](const std::vector<salon::FreeStart>& starts) {
        for (const salon::FreeStart& one : starts)
          salon.io.out << one.starts_at << (one.inside.empty() ? "" : "  in a pause of [" + one.inside + "]") << '\n';
      });
}

Result<void> tests(const Open& salon, const DiaryFlags&) {
  return salon.diary.tests_due().map([&](const std::vector<salon::DueTest>& due) {
    for (const salon::DueTest& one : due) {
      salon.io.out << (one.due == salon::TestDue::to_make ? "to be made by " : "can be read since ") << one.since
                   << "  ";
      print(one.booked, salon.io.out);
    }
  });
}

// Names are opened one by one, as they are printed.
Result<void> due(const Open& salon, const DiaryFlags& flags) {
  const std::string day = flags.day.empty() ? salon.world.now().substr(0, civil_date) : flags.day;
  salon::Clients clients(salon.world);
  const auto people = salon.diary.people_due(day);
  if (!people) return tl::unexpected(people.error());
  for (const salon::DuePerson& one : *people) {
    const auto record = clients.open(one.person);
    if (!record && record.error().front().code == "client_not_found") continue;
    if (!record) return tl::unexpected(record.error());
    salon.io.out << one.due << "  " << printable(record->client.name) << "  [" << one.person << "]\n";
  }
  return {};
}

Result<void> save(const Open& salon, const DiaryFlags& flags, std::string id, std::int64_t seq, wire::Json booking) {
  if (id.empty()) id = salon.world.new_id();
  wire::Json asked{{"id", id}, {"entry", salon.world.new_id()}, {"seq", seq}, {"booking", std::move(booking)}};
  if (flags.beside) asked["beside"] = true;
  return salon.diary.save(asked).map([&](const salon::DiaryLine& line) { print(line, salon.io.out); });
}

Result<void> book(const Open& salon, const DiaryFlags& flags) {
  constexpr std::size_t most = 1u << 20;
  const auto text = flags.file == "-"
                        ? Result<std::string>(std::string(std::istreambuf_iterator<char>(salon.io.in), {}))
                        : salon::read_file(flags.file, most);
  return text.and_then([](const std::string& typed) { return wire::parse(typed); }).and_then([&](wire::Json booking) {
    return save(salon, flags, "", 0, std::move(booking));
  });
}

Result<void> cancel(const Open& salon, const DiaryFlags& flags) {
  return salon.diary.open(flags.id).and_then([&](const salon::DiaryLine& line) {
    wire::Json booking = wire::encode(line.booking);
    booking["state"] = wire::word_of(wire::BookingState::cancelled);
    return save(salon, flags, line.id, line.seq, std::move(booking));
  });
}

}  // namespace

void add_diary(CLI::App& app, Session& session) {
  const auto flags = std::make_shared<DiaryFlags>();
  CLI::App* diary =
      app.add_subcommand("diary", "planned visits: list, free, tests, due, book, cancel; instants of UTC");
  diary->require_subcommand(1);
  const auto command = [&](const char* name, const char* help, const Act& act) {
    CLI::App* c = diary->add_subcommand(name, help);
    c->add_option("--db,--store", flags->db, "salon file; not while it is served");
    c->add_option("--key", flags->key, "key file, beside the salon file unless said");
    c->add_option("--knowledge", flags->knowledge, "folder with demo/, policy/ and shelf/");
    c->callback([flags, act, &session] { session.exit_code = run(*flags, session, act); });
    return c;
  };
  const auto windowed = [&](const char* name, const char* help, const Act& act) {
    CLI::App* c = command(name, help, act);
    c->add_option("--from", flags->from, "2026-03-09T09:00:00Z; nothing = now");
    c->add_option("--until", flags->until, "likewise; nothing = so many days later");
    c->add_option("--days", flags->days, "days")->check(between(1, salon::Diary::kDaysMost));
    return c;
  };
  windowed("list", "lines, by their beginning", list)->add_flag("--json", flags->json, "as the server answers them");
  CLI::App* free = windowed("free", "beginnings at which hands are free", free_starts);
  free->add_option("MINUTES", flags->minutes, "how long")->required()->check(between(5, 1440));
  free->add_option("--with", flags->with, "whose hands; nothing = nobody in particular");
  command("tests", "skin tests that are missing before a colour, or were not read", tests);
  command("due", "who was to come again and was not seen", due)->add_option("--day", flags->day, "today, 2026-03-09");
  CLI::App* booking = command("book", "a line, as a document: starts_at, minutes, kind …", book);
  booking->add_option("FILE", flags->file, "- = as it is typed")->required();
  booking->add_flag("--beside", flags->beside, "the hour is shared knowingly");
  command("cancel", "a line is called off; it stays, as cancelled", cancel)
      ->add_option("LINE", flags->id, "its id")
      ->required();
}

}  // namespace strandline::cli
