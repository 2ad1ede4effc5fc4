// One function per command: adds it to the app; its callback leaves the exit code in the session.
#pragma once

#include <CLI/CLI.hpp>

#include "src/io.h"
#include "strandline/result.h"

namespace strandline::cli {

struct Session {
  Io& io;
  int exit_code = done;
};

// Says what was wrong with a configuration file and refuses the command; false when nothing was.
bool refuse_config(const Problems& wrong, Session& session);

void add_assess(CLI::App& app, Session& session);
void add_predict(CLI::App& app, Session& session);
void add_formulate(CLI::App& app, Session& session);
void add_schedule(CLI::App& app, Session& session);
void add_replan(CLI::App& app, Session& session);
void add_plan(CLI::App& app, Session& session);
void add_fade(CLI::App& app, Session& session);
void add_grow(CLI::App& app, Session& session);
void add_reach(CLI::App& app, Session& session);
void add_review(CLI::App& app, Session& session);
void add_convert(CLI::App& app, Session& session);
void add_substitute(CLI::App& app, Session& session);
void add_serve(CLI::App& app, Session& session);
void add_schema(CLI::App& app, Session& session);
void add_evidence(CLI::App& app, Session& session);
void add_openapi(CLI::App& app, Session& session);
void add_verify(CLI::App& app, Session& session);
void add_weigh(CLI::App& app, Session& session);
void add_move(CLI::App& app, Session& session);
void add_backup(CLI::App& app, Session& session);  // backup, restore
void add_config(CLI::App& app, Session& session);  // config check, config get, healthy
void add_key(CLI::App& app, Session& session);
void add_shelf(CLI::App& app, Session& session);  // shelf list, show, import, export, check, template
void add_stock(CLI::App& app, Session& session);  // stock list, moves, receive, count, waste, write-off, undo
void add_people(CLI::App& app, Session& session);
void add_version(CLI::App& app, Session& session);

}  // namespace strandline::cli
