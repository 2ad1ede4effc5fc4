#include <algorithm>
#include <cctype>
#include <optional>
#include <set>

#include "strandline/wire/json.h"

namespace strandline::wire {

namespace {

struct Place {
  std::size_t line = 1, column = 1;
};

Place place_of(std::string_view text, std::size_t offset) {
  Place at;
  for (char c : text.substr(0, offset)) {
    at.column = c == '\n' ? 1 : at.column + 1;
    at.line += c == '\n';
  }
  return at;
}

Problem problem_at(std::string code, std::string_view text, std::size_t offset) {
  const Place at = place_of(text, offset);
  return {std::move(code), "", {{"line", std::to_string(at.line)}, {"column", std::to_string(at.column)}}};
}

std::string shortened(std::string_view key) {
  constexpr std::size_t most = 60;
  if (key.size() <= most) return std::string(key);
  std::size_t end = most;
  while (end > 0 && (static_cast<unsigned char>(key[end]) & 0xC0) == 0x80) --end;
  return std::string(key.substr(0, end)) + "…";
}

// Builds the value and refuses what the plain parser lets through: depth and repeated keys.
class Builder {
 public:
  using number_integer_t = Json::number_integer_t;
  using number_unsigned_t = Json::number_unsigned_t;
  using number_float_t = Json::number_float_t;
  using string_t = Json::string_t;
  using binary_t = Json::binary_t;

  Builder(std::string_view text, const TextLimits& limits) : text_(text), limits_(limits) {}

  bool null() { return put(nullptr); }
  bool boolean(bool v) { return put(v); }
  bool number_integer(number_integer_t v) { return put(v); }
  bool number_unsigned(number_unsigned_t v) { return put(v); }
  bool number_float(number_float_t v, const string_t&) { return put(v); }
  bool string(string_t& v) { return put(std::move(v)); }
  bool binary(binary_t&) { return fail({"not_json", "", {}}); }
  bool start_object(std::size_t) { return open(Json::object()); }
  bool start_array(std::size_t) { return open(Json::array()); }
  bool end_object() { return close(); }
  bool end_array() { return close(); }

  bool key(string_t& k) {
    Level& top = levels_.back();
    if (!top.keys.insert(k).second) return fail({"duplicate_key", path(), {{"key", shortened(k)}}});
    top.key = std::move(k);
    return true;
  }

  bool parse_error(std::size_t position, const std::string&, const nlohmann::json::exception& error) {
    const std::size_t offset = std::min(position == 0 ? 0 : position - 1, text_.size());
    constexpr int number_overflow = 406;
    const bool named = names_no_number(offset);
    return fail(problem_at(error.id == number_overflow || named ? "not_a_number" : "not_json", text_, offset));
  }

  Result<Json> take() {
    if (problem_) return tl::unexpected(Problems{*problem_});
    return std::move(root_);
  }

 private:
  struct Level {
    Json value;
    std::string key;
    std::set<std::string> keys;
  };

  // NaN and Infinity are no JSON, and worth a word of their own.
  bool names_no_number(std::size_t offset) const {
    std::size_t from = offset;
    while (from > 0 && (std::isalpha(static_cast<unsigned char>(text_[from - 1])) || text_[from - 1] == '-')) --from;
    std::string_view rest = text_.substr(from);
    if (!rest.empty() && rest.front() == '-') rest.remove_prefix(1);
    return rest.starts_with("NaN") || rest.starts_with("nan") || rest.starts_with("Inf") || rest.starts_with("inf");
  }

  std::string path() const {
    std::string out;
    for (const Level& level : levels_) {
      if (&level == &levels_.back()) break;
      out = level.value.is_object() ? pointer(out, level.key) : pointer(out, level.value.size());
    }
    return out;
  }

  bool fail(Problem problem) {
    problem_ = std::move(problem);
    return false;
  }

  bool open(Json value) {
    if (static_cast<int>(levels_.size()) >= limits_.depth) {
      return fail({"too_deep", "", {{"max", std::to_string(limits_.depth)}}});
    }
    levels_.push_back({std::move(value), {}, {}});
    return true;
  }

  bool close() {
    Json value = std::move(levels_.back().value);
    levels_.pop_back();
    return put(std::move(value));
  }

  template <class V>
  bool put(V&& value) {
    if (levels_.empty()) {
      root_ = std::forward<V>(value);
      return true;
    }
    Level& top = levels_.back();
    if (top.value.is_array()) {
      top.value.push_back(std::forward<V>(value));
    } else {
      // Appended without the container's own search for the key: `keys` has already answered that.
      auto& members = top.value.get_ref<Json::object_t&>();
      static_cast<Json::object_t::Container&>(members).emplace_back(top.key, Json(std::forward<V>(value)));
    }
    return true;
  }

  std::string_view text_;
  TextLimits limits_;
  std::vector<Level> levels_;
  Json root_;
  std::optional<Problem> problem_;
};

}  // namespace

std::size_t find_invalid_utf8(std::string_view text) {
  const auto byte = [&](std::size_t i) { return static_cast<unsigned char>(text[i]); };
  std::size_t i = 0;
  while (i < text.size()) {
    const unsigned char lead = byte(i);
    if (lead < 0x80) {
      ++i;
      continue;
    }
    const std::size_t more = lead >= 0xF0 ? 3 : lead >= 0xE0 ? 2 : 1;
    if (lead < 0xC2 || lead > 0xF4 || i + more >= text.size()) return i;
    const unsigned char second = byte(i + 1);
    const bool overlong = (lead == 0xE0 && second < 0xA0) || (lead == 0xF0 && second < 0x90);
    const bool beyond = (lead == 0xED && second > 0x9F) || (lead == 0xF4 && second > 0x8F);
    if (overlong || beyond) return i;
    for (std::size_t k = 1; k <= more; ++k) {
      if ((byte(i + k) & 0xC0) != 0x80) return i;
    }
    i += more + 1;
  }
  return std::string_view::npos;
}

Result<Json> parse(std::string_view text, const TextLimits& limits) {
  if (text.size() > limits.bytes) {
    return tl::unexpected(Problems{
        {"document_too_large", "", {{"bytes", std::to_string(text.size())}, {"max", std::to_string(limits.bytes)}}}});
  }
  if (const std::size_t at = find_invalid_utf8(text); at != std::string_view::npos) {
    Problem problem = problem_at("invalid_utf8", text, at);
    problem.params["byte"] = std::to_string(at);
    return tl::unexpected(Problems{std::move(problem)});
  }
  Builder builder(text, limits);
  Json::sax_parse(text.begin(), text.end(), &builder);
  return builder.take();
}

std::string print(const Json& value, bool pretty) { return value.dump(pretty ? 2 : -1); }

std::string pointer(const std::string& parent, std::string_view key) {
  std::string out = parent + '/';
  for (char c : key) {
    if (c == '~')
      out += "~0";
    else if (c == '/')
      out += "~1";
    else
      out += c;
  }
  return out;
}

std::string pointer(const std::string& parent, std::size_t index) { return parent + '/' + std::to_string(index); }

Json problems_json(const Problems& problems) {
  Json list = Json::array();
  for (const Problem& p : problems) {
    Json params = Json::object();
    for (const auto& [key, value] : p.params) params[key] = value;
    Json item = Json::object();
    item["code"] = p.code;
    item["path"] = p.path;
    item["params"] = std::move(params);
    list.push_back(std::move(item));
  }
  Json out = Json::object();
  out["problems"] = std::move(list);
  return out;
}

}  // namespace strandline::wire
