// What the routes share.
#pragma once

#include <atomic>
#include <optional>

#include "answers.h"
#include "http.h"
#include "metrics.h"
#include "static_files.h"
#include "strandline/salon/counter.h"
#include "strandline/salon/desk.h"
#include "strandline/salon/diary.h"
#include "strandline/salon/ended.h"
#include "strandline/salon/facts.h"
#include "strandline/salon/knowledge.h"
#include "strandline/salon/people.h"
#include "strandline/salon/shelves.h"
#include "strandline/salon/stock.h"
#include "strandline/salon/visits.h"
#include "strandline/salon/watch.h"
#include "strandline/salon/workers.h"
#include "strandline/server/server.h"

namespace strandline::server {

struct Context {
  salon::World world;
  salon::House house;
  salon::Shelves shelves;
  salon::Stock stock;
  salon::Ended ended;
  wire::Sources sources;
  salon::Workers workers;
  StaticFiles files;
  std::atomic<bool> stopping = false;  // work that runs is given up
  int waiting_most;
  salon::Desk desk;

  std::shared_ptr<Leaf> leaf;  // nothing = no other machine is answered
  std::atomic<int> lan_port = 0;

  static constexpr std::size_t answers_bytes = 16u << 20;
  Answers answers{answers_bytes};
  std::atomic<std::uint64_t> known = 0;  // heavy questions answered without work
  Metrics metrics;
  std::filesystem::path salon_file;  // "" = none that is measured

  salon::Clients clients;
  salon::Diary diary;
  salon::People people{world, house.doors};
  salon::Watch watch;
  decltype(ServerOptions::tell) tell;
  std::optional<salon::Counter> counter;  // nothing: no scale stands here

  Context(salon::World w, salon::House h, const ServerOptions& options)
      : world(std::move(w)),
        house(std::move(h)),
        shelves(world, house),
        stock(world, shelves, house.stock),
        ended(world),
        sources(shelves.sources()),
        workers(options.search_threads, true),
        files(options.web),
        waiting_most(options.waiting_most),
        desk(options.at_once, options.waiting_most),
        leaf(options.leaf),
        salon_file(options.salon_file),
        clients(world),
        diary(world, house.diary),
        watch(world.store, options.tell),
        tell(options.tell) {
    if (options.scale) counter.emplace(*options.scale);
    shelves.count_with(
        [this](const std::string& shelf, const std::string& product) { return stock.left(shelf, product); });
  }
};

void add_facts(httplib::Server& http, Context& context);  // /visits/{id}/facts, /visits/{id}/hand-in, /clients
// The session that a request brings along; anybody() while the salon has no people.
Result<salon::Who> asking(Context& context, const httplib::Request& request);
// The paired device that a request comes from; "" = none.
Result<std::string> device_asking(Context& context, const httplib::Request& request);
// That whoever asks is told names of clients is a fact, once for each session.
Result<void> names_opened(Context& context, const httplib::Request& request);

void add_door(httplib::Server& http, Context& context);        // /door: who is in, sign-in, first start
void add_diary(httplib::Server& http, Context& context);       // /diary …, /bookings
void add_people(httplib::Server& http, Context& context);      // /people, /devices
void add_devices(httplib::Server& http, Context& context);     // /devices/invite, /door/redeem, /door/authority
void add_health(httplib::Server& http, Context& context);      // /health, /healthz, /metrics
void add_scale(httplib::Server& http, Context& context);       // /scale
void add_hand_notes(httplib::Server& http, Context& context);  // /hand-notes
void add_shelf(httplib::Server& http,
               Context& context);  // /shelf, /shelf/read, /shelf/classes, /shelves …, /tones, /levels
void add_stock(httplib::Server& http, Context& context);   // /stock …, /prices, /price
void add_visits(httplib::Server& http, Context& context);  // /visits, /visits/{id}, /changes

}  // namespace strandline::server
