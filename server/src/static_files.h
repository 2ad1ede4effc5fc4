#pragma once

#include <filesystem>
#include <map>
#include <string>

#include "http.h"

namespace strandline::server {

// The built web app, read once. Files below assets/ carry a hash in their name and are kept by the browser;
// the rest is asked for again with its ETag. A path without a file that looks like a page gets index.html.
class StaticFiles {
 public:
  explicit StaticFiles(const std::filesystem::path& folder);
  // False when there is nothing for this path.
  bool serve(const httplib::Request& request, httplib::Response& response) const;
  bool empty() const { return files_.empty(); }

 private:
  struct File {
    std::string bytes, type, etag;
    bool hashed = false;
  };
  std::map<std::string, File> files_;
};

}  // namespace strandline::server
