#include "cluster.h"

#include <fcntl.h>
#include <grp.h>
#include <gtest/gtest.h>
#include <libpq-fe.h>
#include <pwd.h>
#include <sys/prctl.h>
#include <sys/wait.h>
#include <unistd.h>

#include <csignal>
#include <cstdlib>
#include <memory>

#include "strandline/store/store.h"

namespace strandline::store {

namespace {

namespace fs = std::filesystem;

// Debian keeps them by version; the newest.
fs::path server_programs() {
  fs::path best;
  std::error_code none;
  for (const auto& version : fs::directory_iterator("/usr/lib/postgresql", none)) {
    const fs::path bin = version.path() / "bin";
    if (fs::exists(bin / "postgres") && (best.empty() || bin > best)) best = bin;
  }
  return best;
}

// The server refuses to run as root: then as somebody who owns nothing else here.
const passwd* somebody() {
  if (::geteuid() != 0) return nullptr;
  const passwd* found = ::getpwnam("postgres");
  return found ? found : ::getpwnam("nobody");
}

}  // namespace

Cluster& Cluster::shared() {
  static Cluster cluster;
  return cluster;
}

Cluster::Cluster() : programs_(server_programs()) {
  if (programs_.empty()) {
    ADD_FAILURE() << "There is no PostgreSQL server here: /usr/lib/postgresql/*/bin/postgres. `tools/setup test` "
                     "installs Debian's package postgresql.";
    return;
  }
  const fs::path memory("/dev/shm");
  const fs::path above = ::access(memory.c_str(), W_OK) == 0 ? memory : fs::temp_directory_path();
  std::string name = (above / "strandline-cluster-XXXXXX").string();
  if (!::mkdtemp(name.data())) {
    ADD_FAILURE() << "no folder for a cluster in " << above;
    return;
  }
  folder_ = name;
  if (const passwd* who = somebody())
    EXPECT_EQ(::chown(folder_.c_str(), who->pw_uid, who->pw_gid), 0) << "chown " << folder_;
  const pid_t made = run({(programs_ / "initdb").string(), "-D", (folder_ / "data").string(), "-U", "postgres",
                          "--auth=trust", "--no-sync", "--locale=C", "--encoding=UTF8"});
  int status = 0;
  ::waitpid(made, &status, 0);
  if (status != 0) {
    ADD_FAILURE() << "initdb failed; what it said is in " << folder_ / "log";
    return;
  }
  start();
  if (!up()) return;
  sql("CREATE ROLE owner LOGIN CREATEROLE");
  sql("CREATE DATABASE salons OWNER owner");
}

Cluster::~Cluster() {
  if (server_ > 0) {
    ::kill(server_, SIGINT);  // at once, whoever is connected
    ::waitpid(server_, nullptr, 0);
  }
  std::error_code error;
  if (!folder_.empty()) fs::remove_all(folder_, error);
}

pid_t Cluster::run(const std::vector<std::string>& command) const {
  const passwd* who = somebody();
  const std::string log = (folder_ / "log").string();
  std::vector<char*> words;
  for (const std::string& word : command) words.push_back(const_cast<char*>(word.c_str()));
  words.push_back(nullptr);
  const pid_t parent = ::getpid(), child = ::fork();
  if (child != 0) return child;
  if (who && (::setgroups(0, nullptr) != 0 || ::setgid(who->pw_gid) != 0 || ::setuid(who->pw_uid) != 0)) ::_exit(126);
  ::prctl(PR_SET_PDEATHSIG, SIGQUIT);
  if (::getppid() != parent) ::_exit(125);
  const int out = ::open(log.c_str(), O_WRONLY | O_CREAT | O_APPEND, 0600);
  if (out < 0 || ::dup2(out, 1) < 0 || ::dup2(out, 2) < 0) ::_exit(124);
  ::close_range(3, ~0U, 0);
  if (::chdir("/") != 0) ::_exit(123);
  ::execv(words[0], words.data());
  ::_exit(127);
}

void Cluster::start() {
  constexpr int tries = 300;
  constexpr useconds_t between = 100'000;
  const std::string at = "host=" + folder_.string() + " dbname=postgres user=postgres";
  for (int i = 0; i < tries; ++i) {
    // Of one that was killed, its children may still be there; then the next refuses to start and is tried again.
    if (server_ < 0 || ::waitpid(server_, nullptr, WNOHANG) == server_)
      server_ = run({(programs_ / "postgres").string(), "-D", (folder_ / "data").string(), "-k", folder_.string(), "-c",
                     "listen_addresses=", "-c", "shared_buffers=16MB", "-c", "max_connections=60"});
    if (PQping(at.c_str()) == PQPING_OK) return;
    ::usleep(between);
  }
  ADD_FAILURE() << "PostgreSQL did not start; what it said is in " << folder_ / "log";
  server_ = -1;
}

void Cluster::kill() {
  ::kill(server_, SIGKILL);
  ::waitpid(server_, nullptr, 0);
  server_ = -1;
}

std::string Cluster::url(const std::string& salon, const std::string& user) const {
  return "postgresql:///salons?host=" + folder_.string() + "&user=" + user + "#" + salon;
}

std::string Cluster::sql(const std::string& text) const {
  const bool made = text.starts_with("CREATE ROLE") || text.starts_with("CREATE DATABASE");
  const std::string at =
      "host=" + folder_.string() + " user=postgres dbname=" + std::string(made ? "postgres" : "salons");
  const std::unique_ptr<PGconn, decltype(&PQfinish)> db(PQconnectdb(at.c_str()), &PQfinish);
  const std::unique_ptr<PGresult, decltype(&PQclear)> done(PQexec(db.get(), text.c_str()), &PQclear);
  const auto status = PQresultStatus(done.get());
  EXPECT_TRUE(status == PGRES_COMMAND_OK || status == PGRES_TUPLES_OK) << text << ": " << PQerrorMessage(db.get());
  return PQntuples(done.get()) > 0 ? PQgetvalue(done.get(), 0, 0) : "";
}

std::string Cluster::fresh_salon() {
  const std::string at = url("s" + std::to_string(++salons_));
  const auto made = Store::make({.path = at, .fails = {}, .key = key()}, [](Store&) { return Expected<void>(); });
  EXPECT_TRUE(made) << made.error().code << ' ' << made.error().detail;
  return at;
}

}  // namespace strandline::store
