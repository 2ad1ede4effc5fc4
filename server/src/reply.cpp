#include "reply.h"

#include <array>
#include <utility>

namespace strandline::server {

namespace {

constexpr std::array<std::pair<std::string_view, int>, 62> statuses{{
    {"not_json", 400},
    {"not_a_number", 400},
    {"invalid_utf8", 400},
    {"too_deep", 400},
    {"duplicate_key", 400},
    {"bad_request", 400},
    {"not_an_id", 400},
    {"not_signed_in", 401},
    {"wrong_secret", 401},
    {"not_your_role", 403},
    {"not_paired", 403},
    {"passphrase_needed", 403},
    {"invitation_gone", 403},
    {"no_other_machines", 409},
    {"host_not_allowed", 403},
    {"origin_not_allowed", 403},
    {"not_found", 404},
    {"visit_not_found", 404},
    {"client_not_found", 404},
    {"booking_not_found", 404},
    {"shelf_not_found", 404},
    {"person_not_found", 404},
    {"device_not_found", 404},
    {"unknown_verb", 404},
    {"method_not_allowed", 405},
    {"visit_changed_elsewhere", 409},
    {"shelf_changed_elsewhere", 409},
    {"booking_changed_elsewhere", 409},
    {"hour_taken", 409},
    {"test_too_soon", 409},
    {"test_too_late", 409},
    {"not_a_test", 409},
    {"shelf_id_taken", 409},
    {"shelf_is_demo", 409},
    {"entry_id_taken", 409},
    {"visit_handed_in", 409},
    {"client_same_name", 409},
    {"moved_meanwhile", 409},
    {"more_than_there", 409},
    {"undone_already", 409},
    {"counted_since", 409},
    {"booked_by_visit", 409},
    {"movement_not_found", 404},
    {"visit_erased", 410},
    {"store_erased", 410},
    {"already_founded", 409},
    {"document_too_large", 413},
    {"path_too_long", 414},
    {"not_json_content", 415},
    {"packed_content", 415},
    {"seq_missing", 428},
    {"try_later", 429},
    {"headers_too_large", 431},
    {"internal", 500},
    {"store_unavailable", 503},
    {"store_moved", 503},
    {"store_damaged", 503},
    {"entry_broken", 503},
    {"busy", 503},
    {"given_up", 503},
    {"out_of_time", 503},
    {"memory_short", 503},
}};

}  // namespace

int status_of(const Problems& problems) {
  constexpr int unprocessable = 422;
  if (problems.empty()) return 500;
  for (const auto& [code, status] : statuses) {
    if (code == problems.front().code) return status;
  }
  return unprocessable;
}

void reply(httplib::Response& response, const wire::Json& body, int status) {
  response.status = status;
  response.set_content(wire::print(body), "application/json");
}

void reply(httplib::Response& response, const Problems& problems) {
  reply(response, wire::problems_json(problems), status_of(problems));
}

}  // namespace strandline::server
