#include "of_visits.h"

#include <algorithm>
#include <charconv>
#include <limits>

namespace strandline::server {

wire::Json json_of(const salon::VisitSummary& s) {
  wire::Json out{{"id", s.id},
                 {"seq", s.seq},
                 {"client", s.client},
                 {"date", s.date},
                 {"opened_at", s.opened_at},
                 {"changed_at", s.changed_at}};
  if (!s.person.empty()) out["person"] = s.person;
  if (!s.handed_in_at.empty()) out["handed_in_at"] = s.handed_in_at;
  return out;
}

void reply_saved(httplib::Response& response, const Result<salon::SavedVisit>& saved, int status) {
  if (saved) response.set_header("ETag", '"' + std::to_string(saved->summary.seq) + '"');
  reply_with(
      response, saved,
      [](const salon::SavedVisit& s) {
        wire::Json out{{"schema", "strandline.saved-visit/1"}};
        out.update(json_of(s.summary));
        out["entry"] = s.entry;
        out["document"] = s.document;
        return out;
      },
      status);
}

std::optional<std::int64_t> whole(std::string text) {
  if (text.size() >= 2 && text.front() == '"' && text.back() == '"') text = text.substr(1, text.size() - 2);
  std::int64_t out = 0;
  const auto parsed = std::from_chars(text.data(), text.data() + text.size(), out);
  if (parsed.ec != std::errc{} || parsed.ptr != text.data() + text.size() || out < 0) return std::nullopt;
  return out;
}

bool refused_query(const httplib::Request& request, httplib::Response& response,
                   std::initializer_list<std::string_view> known) {
  for (const auto& [name, value] : request.params) {
    if (std::find(known.begin(), known.end(), name) != known.end() && request.get_param_value_count(name) == 1)
      continue;
    reply(response, Problems{{"bad_request", "", {{"what", "query parameter " + name}}}});
    return true;
  }
  return false;
}

int limit_of(const httplib::Request& request, int otherwise) {
  if (!request.has_param("limit")) return otherwise;
  const auto limit = whole(request.get_param_value("limit"));
  return limit && *limit <= std::numeric_limits<int>::max() ? static_cast<int>(*limit) : 0;
}

}  // namespace strandline::server
