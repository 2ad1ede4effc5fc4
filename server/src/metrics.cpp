#include "metrics.h"

#include <unistd.h>

#include <algorithm>
#include <fstream>
#include <sstream>

namespace strandline::server {

namespace {

void head(std::ostream& out, const char* name, const char* type, const char* help) {
  out << "# HELP " << name << ' ' << help << "\n# TYPE " << name << ' ' << type << '\n';
}

template <class T>
void one(std::ostream& out, const char* name, const char* type, const char* help, T value) {
  head(out, name, type, help);
  out << name << ' ' << value << '\n';
}

// Bytes of memory that this process holds in RAM; 0 where the system does not say.
std::uint64_t resident_bytes() {
  std::ifstream in("/proc/self/statm");
  std::uint64_t all = 0, resident = 0;
  if (!(in >> all >> resident)) return 0;
  return resident * static_cast<std::uint64_t>(sysconf(_SC_PAGESIZE));
}

double unix_seconds(std::chrono::system_clock::time_point at) {
  return std::chrono::duration<double>(at.time_since_epoch()).count();
}

void tell_desk(std::ostream& out, const salon::Desk::Load& desk, std::uint64_t known) {
  one(out, "strandline_heavy_running", "gauge", "Heavy questions that are worked on now.", desk.running);
  one(out, "strandline_heavy_waiting", "gauge", "Heavy questions that wait for their turn.", desk.waiting);
  head(out, "strandline_heavy_total", "counter", "Heavy questions by how they ended.");
  out << "strandline_heavy_total{end=\"done\"} " << desk.done << "\nstrandline_heavy_total{end=\"refused\"} "
      << desk.refused << "\nstrandline_heavy_total{end=\"left\"} " << desk.left
      << "\nstrandline_heavy_total{end=\"known\"} " << known << '\n';
}

void tell_files(std::ostream& out, const std::filesystem::path& salon) {
  if (salon.empty()) return;
  head(out, "strandline_store_bytes", "gauge", "Bytes of the salon file and of what lies beside it.");
  for (const char* suffix : {"", "-wal", "-head"}) {
    std::error_code error;
    const auto bytes = std::filesystem::file_size(salon.string() + suffix, error);
    out << "strandline_store_bytes{file=\"salon" << suffix << "\"} " << (error ? 0 : bytes) << '\n';
  }
  std::error_code error;
  const auto room = std::filesystem::space(salon.parent_path().empty() ? "." : salon.parent_path(), error);
  if (!error) one(out, "strandline_store_free_bytes", "gauge", "Room left on its disk.", room.available);
}

}  // namespace

void Metrics::count(std::string_view method, std::string_view route, int status, double seconds) {
  const std::lock_guard lock(mutex_);
  ++answers_[{std::string(route), std::string(method), status}];
  Durations& mine = durations_[std::string(route)];
  ++mine.classes[static_cast<std::size_t>(std::lower_bound(bounds.begin(), bounds.end(), seconds) - bounds.begin())];
  mine.sum += seconds;
}

std::string Metrics::text(const salon::Desk::Load& desk, std::uint64_t known,
                          const std::filesystem::path& salon_file) const {
  std::ostringstream out;
  out.precision(15);  // whole seconds of the clock, to the millisecond
  {
    const std::lock_guard lock(mutex_);
    head(out, "strandline_http_answers_total", "counter", "Answers by route, method and status.");
    for (const auto& [key, count] : answers_) {
      const auto& [route, method, status] = key;
      out << "strandline_http_answers_total{route=\"" << route << "\",method=\"" << method << "\",status=\"" << status
          << "\"} " << count << '\n';
    }
    head(out, "strandline_http_seconds", "histogram",
         "From the head of a request to its answer, before it is written.");
    for (const auto& [route, durations] : durations_) {
      std::uint64_t up_to = 0;
      for (std::size_t i = 0; i < durations.classes.size(); ++i) {
        up_to += durations.classes[i];
        out << "strandline_http_seconds_bucket{route=\"" << route << "\",le=\"";
        if (i < bounds.size())
          out << bounds[i];
        else
          out << "+Inf";
        out << "\"} " << up_to << '\n';
      }
      out << "strandline_http_seconds_sum{route=\"" << route << "\"} " << durations.sum
          << "\nstrandline_http_seconds_count{route=\"" << route << "\"} " << up_to << '\n';
    }
  }
  tell_desk(out, desk, known);
  tell_files(out, salon_file);
  one(out, "process_resident_memory_bytes", "gauge", "Memory of this process that is in RAM.", resident_bytes());
  one(out, "process_start_time_seconds", "gauge", "Since 1970, UTC.", unix_seconds(began_));
  one(out, "strandline_uptime_seconds", "gauge", "Since the start.",
      std::chrono::duration<double>(std::chrono::system_clock::now() - began_).count());
  return std::move(out).str();
}

}  // namespace strandline::server
