// What assess, predict, formulate, schedule and plan share: flags, reading the document, answering problems.
#pragma once

#include <CLI/CLI.hpp>
#include <functional>
#include <string>

#include "src/commands.h"
#include "src/print/swatch.h"
#include "strandline/salon/verbs.h"
#include "strandline/salon/workers.h"

namespace strandline::cli {

struct VisitFlags {
  std::string file, shelf, policy, knowledge;
  std::string light = "daylight";
  std::string colour = "auto";
  bool json = false;
  int threads = 2;
  std::optional<double> seconds;
};

// All of a file, or of `in` where it is "-". Problems cannot_read, not_a_file, document_too_large.
Result<std::string> read_text(const std::string& file, std::istream& in);

// A number within `from` and `to`, both included; CLI::Range lets "nan" through.
CLI::Validator between(double from, double to);

// Adds the command with its flags; `work` runs when it is called. Returns it for flags of its own.
CLI::App* add_visit_command(CLI::App& app, Session& session, const char* name, const char* help,
                            std::function<int(const VisitFlags&, Session&)> work);

// The document of FILE read, checked and completed. On problems: prints them and gives nothing.
std::optional<wire::ReadVisit> open_document(const VisitFlags& flags, Session& session);
// Prints problems on the error stream, and as JSON on the output with --json. Returns the exit code.
int refuse(const Problems& problems, const VisitFlags& flags, Session& session);
Paint paint_for(const VisitFlags& flags, const Io& io);

// done, or stopped where the answer holds verdicts that stop it.
template <class Answer>
int exit_of(const Answer& answer) {
  if constexpr (requires { answer.rules.go; }) return answer.rules.go == Go::stopped ? stopped : done;
  if constexpr (requires { answer.plan.rules.go; }) return answer.plan.rules.go == Go::stopped ? stopped : done;
  return done;
}

// Reads, works, prints: `show` for people, answer_json for machines.
template <class Work, class Show>
int run_visit(const VisitFlags& flags, Session& session, Work&& work, Show&& show) {
  const auto asked = open_document(flags, session);
  if (!asked) return session.exit_code;
  salon::Workers workers(flags.threads);
  const auto answer = work(*asked, salon::Effort{workers.parallel_for()});
  if (!answer) return refuse(answer.error(), flags, session);
  if (flags.json) {
    session.io.out << wire::print(wire::answer_json(*answer), true) << '\n';
  } else {
    show(*answer, asked->visit);
  }
  return exit_of(*answer);
}

}  // namespace strandline::cli
