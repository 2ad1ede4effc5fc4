#include "lan.h"

#include <chrono>

#include "strandline/server/server.h"

namespace strandline::server {

namespace {

bool all_addresses(const std::string& host) { return host == "0.0.0.0" || host == "::"; }

}  // namespace

std::string host_of(const std::string& name) { return name.find(':') == std::string::npos ? name : '[' + name + ']'; }

bool may_listen(const std::string& host) { return all_addresses(host) || private_address(host); }

Result<std::shared_ptr<Leaf>> open_leaf(const std::filesystem::path& authority, const std::string& host) {
  const Leaf::Now now = [] {
    return std::chrono::duration_cast<std::chrono::seconds>(std::chrono::system_clock::now().time_since_epoch())
        .count();
  };
  auto opened = open_authority(authority, now());
  if (!opened) return tl::unexpected(opened.error());
  const auto names = [host]() -> std::vector<std::string> {
    std::vector<std::string> out = own_names();
    if (all_addresses(host)) return out;
    std::erase_if(out, [](const std::string& name) { return private_address(name); });
    out.insert(out.begin(), host);
    return out;
  };
  auto leaf = std::make_shared<Leaf>(std::move(*opened), names, now);
  leaf->keep_renewed();
  return leaf;
}

}  // namespace strandline::server
