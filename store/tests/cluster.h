// A PostgreSQL server of the test's own: in a folder of its own, on a socket there only, gone at the end.
#pragma once

#include <sys/types.h>

#include <filesystem>
#include <functional>
#include <string>
#include <vector>

namespace strandline::store {

class Cluster {
 public:
  // One for a whole test program, started when it is first asked for. Fails the test where there is no server program.
  static Cluster& shared();
  Cluster();
  ~Cluster();
  Cluster(const Cluster&) = delete;
  Cluster& operator=(const Cluster&) = delete;

  // Of a salon; by whom: "owner" made the tables, "other" may only serve.
  std::string url(const std::string& salon, const std::string& user = "owner") const;
  // As the superuser, past every wall: the first column of the first row, "" = none.
  std::string sql(const std::string& text) const;
  // Makes the store's part of a new salon and says where it is.
  std::string fresh_salon();
  std::string key() const { return (folder_ / "key").string(); }
  const std::filesystem::path& folder() const { return folder_; }
  bool up() const { return server_ > 0; }

  void start();
  // SIGKILL: everything that is not on the plate is lost.
  void kill();

 private:
  std::filesystem::path folder_, programs_;
  pid_t server_ = -1;
  int salons_ = 0;

  pid_t run(const std::vector<std::string>& command) const;
};

}  // namespace strandline::store
