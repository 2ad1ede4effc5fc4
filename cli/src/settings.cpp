#include "src/settings.h"

#include <toml++/toml.h>

#include <algorithm>
#include <array>
#include <filesystem>
#include <numeric>
#include <optional>
#include <utility>
#include <variant>

#include "strandline/salon/knowledge.h"
#include "strandline/salon/world.h"
#include "strandline/server/server.h"

namespace strandline::cli {

namespace {

using Params = std::map<std::string, std::string>;
using Texts = std::vector<std::string>;
using Member = std::variant<std::string Settings::*, int Settings::*, bool Settings::*, Texts Settings::*>;

// What a text must be.
enum class Says { anything, whole_path, database, here_only, private_network, one_of };

struct Row {
  std::string_view part, key;
  Member member;
  Says says = Says::anything;
  std::string_view words = {};  // of one_of, between bars
  int min = 0, max = 0;         // of a number
};

using S = Settings;
constexpr int port_max = 65535;
constexpr std::array rows{
    Row{"salon", "file", &S::db, Says::whole_path},
    Row{"salon", "store", &S::db, Says::database},
    Row{"salon", "key", &S::key, Says::whole_path},
    Row{"salon", "make", &S::make},
    Row{"server", "address", &S::host, Says::here_only},
    Row{"server", "port", &S::port, {}, {}, 0, port_max},
    Row{"server", "names", &S::allowed_hosts},
    Row{"server", "web", &S::web, Says::whole_path},
    Row{"server", "knowledge", &S::knowledge, Says::whole_path},
    Row{"server", "log", &S::log, Says::one_of, "text|json"},
    Row{"devices", "listen", &S::listen, Says::private_network},
    Row{"devices", "port", &S::listen_port, {}, {}, 0, port_max},
    Row{"backups", "folder", &S::backups, Says::whole_path},
    Row{"backups", "hours", &S::backup_hours, {}, {}, 0, 720},
    Row{"backups", "keep", &S::backup_keep, {}, {}, 1, 10000},
    Row{"scale", "device", &S::scale, Says::whole_path},
    Row{"scale", "form", &S::scale_form, Says::one_of, "sent|asked|usb"},
    Row{"scale", "baud", &S::scale_baud, {}, {}, 300, 921600},
    Row{"limits", "threads", &S::threads, {}, {}, 1, 64},
    Row{"limits", "at_once", &S::at_once, {}, {}, 1, 64},
    Row{"limits", "waiting", &S::waiting, {}, {}, 1, 4096},
    Row{"limits", "connections", &S::connections, {}, {}, 8, 4096},
};
// The first of a part without which its others say nothing.
constexpr std::array<std::pair<std::string_view, std::string_view>, 3> leading{
    {{"devices", "listen"}, {"backups", "folder"}, {"scale", "device"}}};

// How many letters have to be added, taken away or changed.
std::size_t changes(std::string_view a, std::string_view b) {
  std::vector<std::size_t> row(b.size() + 1);
  std::iota(row.begin(), row.end(), 0u);
  for (std::size_t i = 0; i < a.size(); ++i) {
    std::size_t corner = std::exchange(row[0], i + 1);
    for (std::size_t j = 0; j < b.size(); ++j) {
      const std::size_t kept = corner + (a[i] != b[j]);
      corner = row[j + 1];
      row[j + 1] = std::min({kept, row[j] + 1, corner + 1});
    }
  }
  return row.back();
}

// The nearest of what is known, "" when none is near; and all of it, for a sentence.
struct Known {
  std::string near, all;
};
Known known(std::string_view word, const std::vector<std::string_view>& words) {
  constexpr std::size_t slips = 2;
  Known out;
  std::size_t best = slips + 1;
  for (const std::string_view one : words) {
    out.all += (out.all.empty() ? "" : ", ") + std::string(one);
    if (const std::size_t n = changes(word, one); n < best && n < one.size()) best = n, out.near = one;
  }
  return out;
}

std::vector<std::string_view> parts() {
  std::vector<std::string_view> out;
  for (const Row& row : rows)
    if (out.empty() || out.back() != row.part) out.push_back(row.part);
  return out;
}
std::vector<std::string_view> keys_of(std::string_view part) {
  std::vector<std::string_view> out;
  for (const Row& row : rows)
    if (row.part == part) out.push_back(row.key);
  return out;
}

std::string place(const toml::source_region& at, const std::string& what) {
  std::string out = "line " + std::to_string(at.begin.line);
  return what.empty() ? out : out + ", " + what;
}

bool among(std::string_view word, std::string_view words) {
  const std::string all = "|" + std::string(words) + "|";
  return !word.empty() && word.find('|') == std::string_view::npos &&
         all.find("|" + std::string(word) + "|") != std::string::npos;
}

class Reader {
 public:
  Reader(Settings& settings, Problems& problems) : to_(settings), problems_(problems) {}

  void read(const toml::table& all) {
    for (const auto& [key, node] : all) {
      const std::string part(key.str());
      const std::vector<std::string_view> there = parts();
      if (std::find(there.begin(), there.end(), part) == there.end()) {
        const Known k = known(part, there);
        say("config_unknown_part", key.source(), "", {{"part", '[' + part + ']'}, {"near", k.near}, {"known", k.all}});
      } else if (!node.is_table()) {
        say("config_wrong_kind", node.source(), part, {{"wanted", "[" + part + "] and keys below it"}});
      } else {
        read(part, *node.as_table());
      }
    }
  }

 private:
  void read(const std::string& part, const toml::table& table) {
    for (const auto& [key, node] : table) {
      const std::string name(key.str());
      const Row* row =
          std::find_if(rows.begin(), rows.end(), [&](const Row& r) { return r.part == part && r.key == name; });
      if (row == rows.end()) {
        const Known k = known(name, keys_of(part));
        say("config_unknown_key", key.source(), part + '.' + name,
            {{"key", name}, {"part", part}, {"near", k.near}, {"known", k.all}});
        continue;
      }
      std::visit([&](const auto member) { take(*row, node, member); }, row->member);
    }
    if (part == "salon" && table.contains("file") && table.contains("store"))
      say("config_not_both", table.source(), part, {});
    for (const auto& [of, first] : leading)
      if (of == part && !table.contains(first) && !table.empty())
        say("config_alone", table.source(), part, {{"needs", part + '.' + std::string(first)}});
  }

  void take(const Row& row, const toml::node& node, std::string Settings::* member) {
    const auto text = node.value_exact<std::string>();
    if (!text) return wrong(row, node, "a text between quotes");
    if (check(row, node, *text)) to_.*member = *text;
  }
  void take(const Row& row, const toml::node& node, int Settings::* member) {
    const auto number = node.value_exact<std::int64_t>();
    if (!number) return wrong(row, node, "a whole number");
    if (*number < row.min || *number > row.max)
      return say(
          "config_out_of_range", node.source(), name(row),
          {{"value", std::to_string(*number)}, {"min", std::to_string(row.min)}, {"max", std::to_string(row.max)}});
    to_.*member = static_cast<int>(*number);
  }
  void take(const Row& row, const toml::node& node, bool Settings::* member) {
    const auto yes = node.value_exact<bool>();
    if (!yes) return wrong(row, node, "true or false");
    to_.*member = *yes;
  }
  void take(const Row& row, const toml::node& node, Texts Settings::* member) {
    const toml::array* list = node.as_array();
    if (!list) return wrong(row, node, "a list of texts: [\"one\", \"two\"]");
    Texts out;
    for (const toml::node& each : *list) {
      const auto text = each.value_exact<std::string>();
      if (!text) return wrong(row, each, "a text between quotes");
      out.push_back(*text);
    }
    to_.*member = std::move(out);
  }

  bool check(const Row& row, const toml::node& node, const std::string& text) {
    const auto refuse = [&](const char* code, Params more = {}) {
      more["value"] = text;
      say(code, node.source(), name(row), std::move(more));
      return false;
    };
    switch (row.says) {
      case Says::anything:
        return true;
      case Says::whole_path:
        return std::filesystem::path(text).is_absolute() || refuse("config_not_whole_path");
      case Says::database:
        return salon::in_database(text) || refuse("config_not_database");
      case Says::here_only:
        return server::this_machine_only(text) || refuse("config_here_only");
      case Says::private_network:
        return server::may_listen(text) || refuse("config_not_private");
      case Says::one_of:
        std::string words(row.words);
        std::replace(words.begin(), words.end(), '|', ' ');
        return among(text, row.words) || refuse("config_not_one_of", {{"words", words}});
    }
    return false;
  }

  static std::string name(const Row& row) { return std::string(row.part) + '.' + std::string(row.key); }
  void wrong(const Row& row, const toml::node& node, const char* wanted) {
    say("config_wrong_kind", node.source(), name(row), {{"wanted", wanted}});
  }
  void say(const char* code, const toml::source_region& at, const std::string& what, Params params) {
    problems_.push_back({code, place(at, what), std::move(params)});
  }

  Settings& to_;
  Problems& problems_;
};

}  // namespace

Result<void> read_settings(std::string_view text, const std::string& file, Settings& settings) {
  Settings read = settings;
  Problems problems;
  try {
    Reader(read, problems).read(toml::parse(text, file));
  } catch (const toml::parse_error& error) {
    problems = {{"config_not_toml", place(error.source(), ""), {{"detail", std::string(error.description())}}}};
  }
  if (!problems.empty()) return tl::unexpected(problems);
  settings = std::move(read);
  return {};
}

std::optional<std::string> setting(const Settings& settings, std::string_view key) {
  for (const Row& row : rows) {
    if (std::string(row.part) + '.' + std::string(row.key) != key) continue;
    return std::visit(
        [&](const auto member) -> std::string {
          const auto& value = settings.*member;
          using T = std::remove_cvref_t<decltype(value)>;
          if constexpr (std::is_same_v<T, std::string>) return value;
          if constexpr (std::is_same_v<T, int>) return std::to_string(value);
          if constexpr (std::is_same_v<T, bool>) return value ? "true" : "false";
          if constexpr (std::is_same_v<T, Texts>)
            return std::accumulate(value.begin(), value.end(), std::string(),
                                   [](std::string all, const std::string& one) { return std::move(all) + one + '\n'; });
        },
        row.member);
  }
  return std::nullopt;
}

Result<void> read_settings_file(const std::string& file, Settings& settings) {
  constexpr std::size_t most = 1u << 20;
  return salon::read_file(file, most).and_then([&](const std::string& text) {
    return read_settings(text, file, settings);
  });
}

std::shared_ptr<Problems> add_config_option(CLI::App& command, const std::shared_ptr<Settings>& settings) {
  auto problems = std::make_shared<Problems>();
  // Both are held by the callback of the command, which lives as long as its options do.
  command.add_option_function<std::string>(
      "--config",
      [into = settings.get(), said = problems.get()](const std::string& file) {
        if (const auto read = read_settings_file(file, *into); !read) *said = read.error();
      },
      "configuration file; what stands on the command line wins over it");
  return problems;
}

}  // namespace strandline::cli
