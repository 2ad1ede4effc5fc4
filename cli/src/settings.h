// What the server is told: the defaults, over them one configuration file (TOML), over both the command line.
#pragma once

#include <CLI/CLI.hpp>
#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "strandline/result.h"

namespace strandline::cli {

struct Settings {
  std::string db, key;  // a file, or postgresql://…; "" = as the command says; beside the salon file
  bool make = false, demo = false, as_found = false;
  std::string host = "127.0.0.1", web, knowledge, log = "text";
  std::vector<std::string> allowed_hosts;
  int port = 7407;
  std::string listen;
  int listen_port = 7443;
  std::string backups;
  int backup_hours = 24, backup_keep = 30;  // 0 hours = only when `strandline backup` asks for one
  std::string scale, scale_form = "sent";
  int scale_baud = 9600;
  int threads = 2, at_once = 2, waiting = 128, connections = 256;
};

// Takes over what `text` says, the file being called `file`; `settings` is as it was where there are problems. Each has
// its line and key as path. Problems: config_not_toml {detail}, config_unknown_part {part, near, known},
// config_unknown_key {key, part, near, known}, config_wrong_kind {wanted}, config_out_of_range {value, min, max},
// config_not_one_of {value, words}, config_not_whole_path {value}, config_here_only {value}, config_not_private
// {value}, config_alone {needs}, config_not_database {value}, config_not_both.
Result<void> read_settings(std::string_view text, const std::string& file, Settings& settings);
// Likewise of a file. Problems also of salon::read_file().
Result<void> read_settings_file(const std::string& file, Settings& settings);

// What is in force for one key, "server.port"; nothing when there is no such key. Lists are one word a line.
std::optional<std::string> setting(const Settings& settings, std::string_view key);

// The option --config FILE of a command, before all others that write into `settings`, so that those win. What was
// wrong with the file is in the result once the command line was read.
std::shared_ptr<Problems> add_config_option(CLI::App& command, const std::shared_ptr<Settings>& settings);

}  // namespace strandline::cli
