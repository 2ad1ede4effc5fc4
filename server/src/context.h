// What the routes share.
#pragma once

#include <atomic>
#include <optional>

#include "http.h"
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
  // Work at once, and how many may wait for it: fewer than there are connections, so that the rest stay quick.
  static constexpr int at_once = 2, waiting_most = 128;
  salon::Desk desk{at_once, waiting_most};

  std::shared_ptr<Leaf> leaf;  // nothing = no other machine is answered
  std::atomic<int> lan_port = 0;

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
        leaf(options.leaf),
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
void add_health(httplib::Server& http, Context& context);      // /health
void add_scale(httplib::Server& http, Context& context);       // /scale
void add_hand_notes(httplib::Server& http, Context& context);  // /hand-notes
void add_shelf(httplib::Server& http,
               Context& context);  // /shelf, /shelf/read, /shelf/classes, /shelves …, /tones, /levels
void add_stock(httplib::Server& http, Context& context);   // /stock …, /prices, /price
void add_visits(httplib::Server& http, Context& context);  // /visits, /visits/{id}, /changes

}  // namespace strandline::server
