// What the routes share.
#pragma once

#include <semaphore>

#include "http.h"
#include "static_files.h"
#include "strandline/salon/knowledge.h"
#include "strandline/salon/visits.h"
#include "strandline/salon/watch.h"
#include "strandline/salon/workers.h"
#include "strandline/server/server.h"

namespace strandline::server {

struct Context {
  salon::World world;
  salon::House house;
  wire::Sources sources;
  salon::Workers workers;
  StaticFiles files;
  // Searches that may run at once; the others wait, so that a burst of plans leaves the quick questions
  // quick.
  static constexpr int searches_at_once = 2;
  std::counting_semaphore<searches_at_once> searches{searches_at_once};

  salon::Watch watch;

  Context(salon::World w, salon::House h, const ServerOptions& options)
      : world(std::move(w)),
        house(std::move(h)),
        sources(house.sources()),
        workers(options.search_threads),
        files(options.web),
        watch(world.store, options.tell) {}
};

void add_health(httplib::Server& http, Context& context);  // /health
void add_shelf(httplib::Server& http, Context& context);   // /shelf, /tones, /levels
void add_verbs(httplib::Server& http, Context& context);   // /assess … /what-if
void add_visits(httplib::Server& http, Context& context);  // /visits, /visits/{id}, /changes

}  // namespace strandline::server
