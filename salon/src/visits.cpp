#include "strandline/salon/visits.h"

#include <algorithm>

#include "handed_in.h"
#include "members.h"
#include "of_store.h"
#include "strandline/salon/knowledge.h"

namespace strandline::salon {

namespace {

VisitSummary summary_of(const store::VisitRow& row) {
  return {row.visit_id, row.seq, row.client, row.date, row.opened_at, row.changed_at, row.person, ""};
}

// The shape is right; the options of one question are not kept, what this head's days are like is.
Result<wire::Json> keepable(const wire::Json& document, const wire::Sources& sources) {
  const auto read = wire::read_visit(document, sources);
  if (!read) return tl::unexpected(read.error());
  wire::Json out = document;
  const wire::Json habit = out.contains("options") ? out["options"].value("habit", wire::Json()) : wire::Json();
  // A name that follows the newest version is kept as the version it is today.
  const std::string& version = read->visit.shelf.id;
  const bool named = !out.contains("shelf") || out["shelf"].is_string();
  if (named && version.find('@') != std::string::npos) out["shelf"] = version;
  out.erase("options");
  if (!habit.is_null()) out["options"]["habit"] = habit;
  return out;
}

// `opened_at` "" = with this save.
Result<SavedVisit> save(World& world, const store::NewDraft& draft, const wire::Json& kept,
                        const std::string& opened_at = "") {
  const auto written = world.store->save(draft);
  if (!written) return problem_of(written.error());
  return SavedVisit{{written->visit_id, written->seq, text_at(kept, "client"), text_at(kept, "date"),
                     opened_at.empty() ? written->made_at : opened_at, written->made_at, draft.person, ""},
                    written->id,
                    kept};
}

// Nothing is saved into a visit that was handed in.
Result<void> not_over(World& world, const std::string& visit_id) {
  const auto end = end_of(world, visit_id);
  if (!end) return tl::unexpected(end.error());
  if (*end) return tl::unexpected(Problems{{"visit_handed_in", "", {{"at", (*end)->made_at}}}});
  return {};
}

}  // namespace

Result<VisitsPage> list_visits(World& world, const VisitsAsked& asked) {
  constexpr int most = 500;
  if (asked.limit < 1 || asked.limit > most) return tl::unexpected(Problems{{"bad_request", "", {{"what", "limit"}}}});
  // One more than asked tells whether another page follows.
  store::VisitsAsked of_store{.find = asked.find, .client = asked.client, .limit = asked.limit + 1};
  const auto before = place_of(asked.cursor, of_store.before);
  if (!before) return tl::unexpected(before.error());
  of_store.before = *before;
  const auto rows = world.store->visits(of_store);
  if (!rows) return problem_of(rows.error());
  VisitsPage out;
  for (const store::VisitRow& row : *rows) {
    if (out.visits.size() == static_cast<std::size_t>(asked.limit)) {
      out.next = std::to_string((*rows)[out.visits.size() - 1].store_seq);
      break;
    }
    out.visits.push_back(summary_of(row));
  }
  return out;
}

Result<SavedVisit> open_saved(World& world, const std::string& id) {
  const auto row = world.store->visit(id);
  if (!row) return problem_of(row.error());
  if (!*row) {
    const auto end = end_of(world, id);
    if (!end) return tl::unexpected(end.error());
    if (*end) return as_handed_in(**end);
    return tl::unexpected(Problems{{"visit_not_found", "", {{"id", id}}}});
  }
  auto document = wire::parse((*row)->body);
  if (!document) return problem_of({"store_damaged", "visit " + id, (*row)->store_seq});
  return SavedVisit{summary_of(**row), (*row)->entry_id, std::move(*document)};
}

Result<SavedVisit> save_new(World& world, const wire::Json& document, const wire::Sources& sources,
                            const std::string& entry, const std::string& person) {
  return id_for(world, entry).and_then([&](const std::string& id) {
    return keepable(document, sources).and_then([&](const wire::Json& kept) -> Result<SavedVisit> {
      if (const auto over = not_over(world, id); !over) return tl::unexpected(over.error());
      return save(world, {id, id, 0, world.now(), wire::print(kept), person}, kept);
    });
  });
}

Result<SavedVisit> save_change(World& world, const std::string& id, std::int64_t seen_seq, const wire::Json& document,
                               const wire::Sources& sources, const std::string& entry) {
  return id_for(world, entry).and_then([&](const std::string& entry_id) {
    return keepable(document, sources).and_then([&](const wire::Json& kept) -> Result<SavedVisit> {
      const auto row = world.store->visit(id);
      if (!row) return problem_of(row.error());
      if (!*row) {
        if (const auto over = not_over(world, id); !over) return tl::unexpected(over.error());
        return tl::unexpected(Problems{{"visit_not_found", "", {{"id", id}}}});
      }
      return save(world, {entry_id, id, seen_seq, world.now(), wire::print(kept), (*row)->person}, kept,
                  (*row)->opened_at);
    });
  });
}

Result<std::vector<Change>> changes(World& world, std::int64_t after) {
  const auto saves = world.store->changes(after);
  if (!saves) return problem_of(saves.error());
  std::vector<Change> out;
  for (const store::Save& s : *saves) out.push_back({s.store_seq, s.visit_id, s.seq, s.made_at, "visit"});
  return out;
}

Result<int> open_demo_salon(World& world, const std::filesystem::path& folder, const wire::Sources& sources) {
  std::vector<std::filesystem::path> files;
  std::error_code error;
  for (const auto& file : std::filesystem::directory_iterator(folder, error)) {
    if (file.path().extension() == ".json") files.push_back(file.path());
  }
  if (error) return tl::unexpected(Problems{{"cannot_read", "", {{"file", folder.string()}}}});
  std::sort(files.begin(), files.end());
  for (const auto& file : files) {
    const std::string id = "demo-" + file.stem().string();
    const auto saved =
        read_file(file, wire::TextLimits{}.bytes)
            .and_then([](const std::string& text) { return wire::parse(text); })
            .and_then([&](const wire::Json& document) { return keepable(document, sources); })
            .and_then([&](const wire::Json& kept) {
              return save(world, {id + "-1", id, 0, "2026-03-09T09:00:00Z", wire::print(kept), ""}, kept);
            });
    if (!saved) return tl::unexpected(saved.error());
  }
  return static_cast<int>(files.size());
}

}  // namespace strandline::salon
