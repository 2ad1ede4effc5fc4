#include "static_files.h"

#include <array>
#include <cstdint>
#include <cstdio>
#include <fstream>
#include <iterator>
#include <utility>

namespace strandline::server {

namespace {

std::string type_of(const std::string& extension) {
  constexpr std::array<std::pair<std::string_view, std::string_view>, 13> types{{
      {".html", "text/html; charset=utf-8"},
      {".js", "text/javascript; charset=utf-8"},
      {".css", "text/css; charset=utf-8"},
      {".json", "application/json"},
      {".webmanifest", "application/manifest+json"},
      {".svg", "image/svg+xml"},
      {".png", "image/png"},
      {".jpg", "image/jpeg"},
      {".ico", "image/x-icon"},
      {".woff2", "font/woff2"},
      {".wasm", "application/wasm"},
      {".txt", "text/plain; charset=utf-8"},
      {".map", "application/json"},
  }};
  for (const auto& [key, type] : types) {
    if (key == extension) return std::string(type);
  }
  return "application/octet-stream";
}

// FNV-1a: names a version of a file, protects nothing.
std::string etag_of(const std::string& bytes) {
  std::uint64_t hash = 0xcbf29ce484222325u;
  for (const char c : bytes) hash = (hash ^ static_cast<unsigned char>(c)) * 0x100000001b3u;
  char text[24];
  std::snprintf(text, sizeof text, "\"%016llx\"", static_cast<unsigned long long>(hash));
  return text;
}

bool looks_like_a_page(const std::string& path) { return path.find('.', path.rfind('/') + 1) == std::string::npos; }

}  // namespace

StaticFiles::StaticFiles(const std::filesystem::path& folder) {
  if (folder.empty() || !std::filesystem::is_directory(folder)) return;
  for (const auto& entry : std::filesystem::recursive_directory_iterator(folder)) {
    if (!entry.is_regular_file()) continue;
    std::ifstream in(entry.path(), std::ios::binary);
    File file;
    file.bytes.assign(std::istreambuf_iterator<char>(in), {});
    file.type = type_of(entry.path().extension().string());
    file.etag = etag_of(file.bytes);
    std::string name = "/";
    name += std::filesystem::relative(entry.path(), folder).generic_string();
    file.hashed = name.starts_with("/assets/");
    files_[name] = std::move(file);
  }
}

bool StaticFiles::serve(const httplib::Request& request, httplib::Response& response) const {
  auto found = files_.find(request.path == "/" ? "/index.html" : request.path);
  if (found == files_.end() && looks_like_a_page(request.path)) found = files_.find("/index.html");
  if (found == files_.end()) return false;
  const File& file = found->second;
  response.set_header("ETag", file.etag);
  response.set_header("Cache-Control", file.hashed ? "public, max-age=31536000, immutable" : "no-cache");
  if (request.get_header_value("If-None-Match") == file.etag) {
    response.status = 304;
    return true;
  }
  response.set_content(file.bytes, file.type);
  return true;
}

}  // namespace strandline::server
