#include "knowledge_file.h"

#include <cmath>
#include <cstdio>
#include <fstream>
#include <stdexcept>

namespace strandline::fibre_bed {

namespace {

// Text here is plain ASCII; quotes and backslashes are escaped, anything below a space is refused.
std::string quoted(const std::string& text) {
  std::string out = "\"";
  for (char c : text) {
    if (static_cast<unsigned char>(c) < ' ')
      throw std::runtime_error("control character in a text of a knowledge file");
    if (c == '"' || c == '\\') out += '\\';
    out += c;
  }
  return out + '"';
}

std::string number(double x) {
  if (!std::isfinite(x)) throw std::runtime_error("a number of a knowledge file is not finite");
  char text[32];
  std::snprintf(text, sizeof text, "%.6g", x);
  return text;
}

std::string member(const char* key, const std::string& value) {
  return std::string(" \"") + key + "\": " + quoted(value);
}

}  // namespace

std::string to_json(const TableFile& f) {
  std::string out = "{\n \"kind\": \"table\",\n" + member("name", f.name) + ",\n" + member("title", f.title) + ",\n" +
                    member("unit", f.unit) + ",\n" + member("source", f.source) + ",\n" + member("command", f.command) +
                    ",\n \"columns\": [";
  for (size_t i = 0; i < f.columns.size(); ++i) out += (i ? ", " : "") + quoted(f.columns[i]);
  out += "],\n \"rows\": [";
  for (size_t r = 0; r < f.rows.size(); ++r) {
    if (f.rows[r].size() != f.columns.size()) throw std::runtime_error(f.name + ": a row does not match the columns");
    out += r ? ",\n  [" : "\n  [";
    for (size_t i = 0; i < f.rows[r].size(); ++i) out += (i ? ", " : "") + number(f.rows[r][i]);
    out += "]";
  }
  return out + "\n ]\n}\n";
}

std::string to_json(const ConstantsFile& f) {
  std::string out = "{\n \"kind\": \"constants\",\n" + member("title", f.title) + ",\n" + member("command", f.command) +
                    ",\n \"constants\": [";
  for (size_t i = 0; i < f.constants.size(); ++i) {
    const auto& c = f.constants[i];
    out += std::string(i ? ",\n" : "\n") + "  {\n  " + member("key", c.key) + ",\n   \"value\": " + number(c.value) +
           ",\n   \"sd\": " + number(c.sd) + ",\n  " + member("unit", c.unit) + ",\n  " + member("source", c.source) +
           "\n  }";
  }
  return out + "\n ]\n}\n";
}

void write_file(const std::string& path, const std::string& text) {
  std::ofstream out(path, std::ios::binary);
  out << text;
  out.close();
  if (!out) throw std::runtime_error("cannot write " + path + "; check that the folder exists and may be written");
}

}  // namespace strandline::fibre_bed
