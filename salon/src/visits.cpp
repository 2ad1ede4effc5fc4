#include "strandline/salon/visits.h"

#include <algorithm>
#include <charconv>

#include "strandline/salon/knowledge.h"

namespace strandline::salon {

namespace {

tl::unexpected<Problems> problem_of(const store::Trouble& trouble) {
  if (trouble.code == "store_conflict") {
    return tl::unexpected(Problems{{"visit_changed_elsewhere", "", {{"seq", std::to_string(trouble.seq)}}}});
  }
  if (trouble.code == "store_id_taken")
    return tl::unexpected(Problems{{"entry_id_taken", "", {{"id", trouble.detail}}}});
  return tl::unexpected(Problems{{trouble.code, "", {{"detail", trouble.detail}}}});
}

VisitSummary summary_of(const store::VisitRow& row) {
  return {row.visit_id, row.seq, row.client, row.date, row.opened_at, row.changed_at};
}

// The shape is right; the options of one question are not kept, what this head's days are like is.
Result<wire::Json> keepable(const wire::Json& document, const wire::Sources& sources) {
  const auto read = wire::read_visit(document, sources);
  if (!read) return tl::unexpected(read.error());
  wire::Json out = document;
  const wire::Json habit = out.contains("options") ? out["options"].value("habit", wire::Json()) : wire::Json();
  out.erase("options");
  if (!habit.is_null()) out["options"]["habit"] = habit;
  return out;
}

std::string text_at(const wire::Json& document, const char* key) {
  const auto found = document.find(key);
  return found != document.end() && found->is_string() ? found->get<std::string>() : "";
}

// `opened_at` "" = with this save.
Result<SavedVisit> save(World& world, const store::NewDraft& draft, const wire::Json& kept,
                        const std::string& opened_at = "") {
  const auto written = world.store->save(draft);
  if (!written) return problem_of(written.error());
  return SavedVisit{{written->visit_id, written->seq, text_at(kept, "client"), text_at(kept, "date"),
                     opened_at.empty() ? written->made_at : opened_at, written->made_at},
                    written->id,
                    kept};
}

// The id given, or a new one.
Result<std::string> id_for(World& world, const std::string& given) {
  constexpr std::size_t shortest = 16, longest = 80;
  constexpr std::string_view signs = "0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz-_";
  if (given.empty()) return world.new_id();
  if (given.size() < shortest || given.size() > longest || given.find_first_not_of(signs) != std::string::npos) {
    return tl::unexpected(Problems{{"not_an_id", "", {{"id", given}}}});
  }
  return given;
}

}  // namespace

Result<VisitsPage> list_visits(World& world, const VisitsAsked& asked) {
  constexpr int most = 500;
  if (asked.limit < 1 || asked.limit > most) return tl::unexpected(Problems{{"bad_request", "", {{"what", "limit"}}}});
  // One more than asked tells whether another page follows.
  store::VisitsAsked of_store{.find = asked.find, .client = asked.client, .limit = asked.limit + 1};
  if (!asked.cursor.empty()) {
    const char* end = asked.cursor.data() + asked.cursor.size();
    const auto read = std::from_chars(asked.cursor.data(), end, of_store.before);
    if (read.ec != std::errc{} || read.ptr != end || of_store.before < 1) {
      return tl::unexpected(Problems{{"bad_request", "", {{"what", "cursor"}}}});
    }
  }
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
  if (!*row) return tl::unexpected(Problems{{"visit_not_found", "", {{"id", id}}}});
  auto document = wire::parse((*row)->body);
  if (!document) return problem_of({"store_damaged", "visit " + id, (*row)->store_seq});
  return SavedVisit{summary_of(**row), (*row)->entry_id, std::move(*document)};
}

Result<SavedVisit> save_new(World& world, const wire::Json& document, const wire::Sources& sources,
                            const std::string& entry) {
  return id_for(world, entry).and_then([&](const std::string& id) {
    return keepable(document, sources).and_then([&](const wire::Json& kept) {
      return save(world, {id, id, 0, world.now(), wire::print(kept), ""}, kept);
    });
  });
}

Result<SavedVisit> save_change(World& world, const std::string& id, std::int64_t seen_seq, const wire::Json& document,
                               const wire::Sources& sources, const std::string& entry) {
  return id_for(world, entry).and_then([&](const std::string& entry_id) {
    return keepable(document, sources).and_then([&](const wire::Json& kept) -> Result<SavedVisit> {
      const auto row = world.store->visit(id);
      if (!row) return problem_of(row.error());
      if (!*row) return tl::unexpected(Problems{{"visit_not_found", "", {{"id", id}}}});
      return save(world, {entry_id, id, seen_seq, world.now(), wire::print(kept), ""}, kept, (*row)->opened_at);
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
