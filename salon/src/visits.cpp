#include "strandline/salon/visits.h"

#include <algorithm>

#include "strandline/salon/knowledge.h"

namespace strandline::salon {

namespace {

constexpr const char* kind_visit = "visit";

tl::unexpected<Problems> problem_of(const store::Trouble& trouble) {
  if (trouble.code == "store_conflict") {
    return tl::unexpected(Problems{{"visit_changed_elsewhere", "", {{"seq", std::to_string(trouble.seq)}}}});
  }
  return tl::unexpected(Problems{{trouble.code, "", {{"detail", trouble.detail}}}});
}

VisitSummary summary_of(const store::VisitRow& row) {
  return {row.visit_id, row.seq, row.client, row.date, row.opened_at, row.changed_at};
}

// The shape is right; the options of one question are not kept.
Result<wire::Json> keepable(const wire::Json& document, const wire::Sources& sources) {
  const auto read = wire::read_visit(document, sources);
  if (!read) return tl::unexpected(read.error());
  wire::Json out = document;
  out.erase("options");
  return out;
}

Result<SavedVisit> append(World& world, const store::NewEntry& entry) {
  const auto written = world.store->append(entry);
  if (!written) return problem_of(written.error());
  return open_saved(world, entry.visit_id);
}

}  // namespace

Result<std::vector<VisitSummary>> list_visits(World& world) {
  const auto rows = world.store->visits();
  if (!rows) return problem_of(rows.error());
  std::vector<VisitSummary> out;
  for (const store::VisitRow& row : *rows) out.push_back(summary_of(row));
  return out;
}

Result<SavedVisit> open_saved(World& world, const std::string& id) {
  const auto row = world.store->visit(id);
  if (!row) return problem_of(row.error());
  if (!*row) return tl::unexpected(Problems{{"visit_not_found", "", {{"id", id}}}});
  return wire::parse((*row)->body).map([&](wire::Json document) {
    return SavedVisit{summary_of(**row), std::move(document)};
  });
}

Result<SavedVisit> save_new(World& world, const wire::Json& document, const wire::Sources& sources) {
  return keepable(document, sources).and_then([&](const wire::Json& kept) {
    return append(world, {world.new_id(), world.new_id(), 0, world.now(), kind_visit, wire::print(kept)});
  });
}

Result<SavedVisit> save_change(World& world, const std::string& id, std::int64_t seen_seq, const wire::Json& document,
                               const wire::Sources& sources) {
  return keepable(document, sources).and_then([&](const wire::Json& kept) -> Result<SavedVisit> {
    const auto row = world.store->visit(id);
    if (!row) return problem_of(row.error());
    if (!*row) return tl::unexpected(Problems{{"visit_not_found", "", {{"id", id}}}});
    return append(world, {world.new_id(), id, seen_seq, world.now(), kind_visit, wire::print(kept)});
  });
}

Result<std::vector<Change>> changes(World& world, std::int64_t after) {
  const auto entries = world.store->changes(after);
  if (!entries) return problem_of(entries.error());
  std::vector<Change> out;
  for (const store::Entry& e : *entries) out.push_back({e.store_seq, e.visit_id, e.seq, e.made_at, e.kind});
  return out;
}

Result<int> open_demo_salon(World& world, const std::filesystem::path& folder, const wire::Sources& sources) {
  const auto known = list_visits(world);
  if (!known) return tl::unexpected(known.error());
  if (!known->empty()) return 0;
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
              return append(world, {id + "-1", id, 0, "2026-03-09T09:00:00Z", kind_visit, wire::print(kept)});
            });
    if (!saved) return tl::unexpected(saved.error());
  }
  return static_cast<int>(files.size());
}

}  // namespace strandline::salon
