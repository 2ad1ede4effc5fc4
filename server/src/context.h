// What the routes share.
#pragma once

#include "http.h"
#include "static_files.h"
#include "strandline/salon/knowledge.h"
#include "strandline/salon/visits.h"
#include "strandline/salon/workers.h"

namespace strandline::server {

struct Context {
  salon::World world;
  salon::House house;
  wire::Sources sources;
  salon::Workers workers;
  StaticFiles files;

  Context(salon::World w, salon::House h, const std::filesystem::path& web, int threads)
      : world(std::move(w)), house(std::move(h)), sources(house.sources()), workers(threads), files(web) {}
};

void add_health(httplib::Server& http);
void add_shelf(httplib::Server& http, Context& context);   // /shelf, /tones, /levels
void add_verbs(httplib::Server& http, Context& context);   // /assess … /what-if
void add_visits(httplib::Server& http, Context& context);  // /visits, /visits/{id}, /changes

}  // namespace strandline::server
