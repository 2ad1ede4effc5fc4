// A server that runs for the length of one test, on any free port of loopback.
#pragma once

#include <arpa/inet.h>
#include <gtest/gtest.h>
#include <httplib.h>
#include <sys/socket.h>
#include <unistd.h>

#include <atomic>
#include <cerrno>
#include <fstream>
#include <iterator>
#include <mutex>
#include <system_error>
#include <thread>

#include "strandline/server/server.h"
#include "strandline/wire/json.h"

namespace strandline::server {

using wire::Json;

inline const std::filesystem::path root(STRANDLINE_SOURCE_DIR);

inline std::string text_of(const std::filesystem::path& file) {
  std::ifstream in(file);
  return {std::istreambuf_iterator<char>(in), {}};
}

inline std::string visit(const std::string& name) { return text_of(root / "knowledge/demo/visits" / (name + ".json")); }

// A web folder with a page and a hashed file.
inline std::filesystem::path web_folder() {
  const auto folder = std::filesystem::temp_directory_path() / ("strandline-web-" + std::to_string(getpid()));
  std::filesystem::create_directories(folder / "assets");
  std::ofstream(folder / "index.html") << "<!doctype html><title>x</title>";
  std::ofstream(folder / "assets" / "app-1234.js") << "1;";
  return folder;
}

class Running : public testing::Test {
 protected:
  void SetUp() override {
    auto world = salon::real_world(":memory:");
    ASSERT_TRUE(world);
    start(std::move(*world));
  }

  void start(salon::World world) {
    auto house = salon::open_house({.shelf = {}, .policy = {}, .knowledge = root / "knowledge"});
    ASSERT_TRUE(house);
    house->doors.hash = {1, 1};  // cheap: many sign in here
    server_ = std::make_unique<Server>(ServerOptions{.port = 0,
                                                     .web = web_folder(),
                                                     .allowed_hosts = {},
                                                     .scale = scale_,
                                                     .salon_file = salon_file_,
                                                     .log =
                                                         [this](const Json& event) {
                                                           const std::lock_guard lock(heard_mutex_);
                                                           heard_.push_back(event);
                                                         }},
                                       std::move(world), std::move(*house));
    const auto port = server_->bind();
    ASSERT_TRUE(port);
    port_ = *port;
    thread_ = std::thread([this] { server_->run(); });
    while (!server_->running()) std::this_thread::sleep_for(std::chrono::milliseconds(1));
    client_ = std::make_unique<httplib::Client>("127.0.0.1", port_);
    client_->set_read_timeout(120);
  }

  void TearDown() override {
    client_.reset();
    server_->stop();
    thread_.join();
  }

  httplib::Result post(const std::string& path, const std::string& body, const httplib::Headers& headers = {}) {
    return client_->Post(path, headers, body, "application/json");
  }

  // Raw bytes in, everything that comes back out.
  std::string raw(const std::string& bytes) const {
    const int s = socket(AF_INET, SOCK_STREAM, 0);
    if (s < 0) throw std::system_error(errno, std::generic_category(), "socket");
    sockaddr_in to{};
    to.sin_family = AF_INET;
    to.sin_port = htons(static_cast<uint16_t>(port_));
    to.sin_addr.s_addr = htonl(INADDR_LOOPBACK);
    EXPECT_EQ(connect(s, reinterpret_cast<sockaddr*>(&to), sizeof to), 0);
    EXPECT_EQ(send(s, bytes.data(), bytes.size(), MSG_NOSIGNAL), static_cast<ssize_t>(bytes.size()));
    std::string out;
    char buffer[4096];
    for (ssize_t got; (got = recv(s, buffer, sizeof buffer, 0)) > 0;) out.append(buffer, static_cast<std::size_t>(got));
    close(s);
    return out;
  }

  std::string host() const { return "127.0.0.1:" + std::to_string(port_); }

  static std::string code_of(const httplib::Result& got) { return Json::parse(got->body)["problems"][0]["code"]; }

  // What the server said of itself until now.
  std::vector<Json> heard() {
    const std::lock_guard lock(heard_mutex_);
    return heard_;
  }

  std::mutex heard_mutex_;
  std::vector<Json> heard_;
  std::filesystem::path salon_file_;
  std::optional<salon::ScaleDevice> scale_;
  std::unique_ptr<Server> server_;
  std::unique_ptr<httplib::Client> client_;
  std::thread thread_;
  int port_ = 0;
};

}  // namespace strandline::server
