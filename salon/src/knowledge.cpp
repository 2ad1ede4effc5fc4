#include "strandline/salon/knowledge.h"

#include <fstream>

#include "strandline/predict.h"
#include "strandline/treatment.h"

#ifndef STRANDLINE_KNOWLEDGE
#error "STRANDLINE_KNOWLEDGE names the knowledge folder of this build"
#endif

namespace strandline::salon {

namespace {

template <class T>
Result<T> read_known(const std::filesystem::path& file, Result<T> (*decode)(const wire::Json&)) {
  constexpr std::size_t bytes_max = 64u << 20;
  return read_file(file, bytes_max)
      .and_then([&](const std::string& text) { return wire::parse(text, {.bytes = bytes_max}); })
      .and_then([&](const wire::Json& json) { return decode(json); })
      .map_error([&](Problems problems) {
        for (Problem& p : problems) p.params["file"] = file.string();
        return problems;
      });
}

}  // namespace

std::filesystem::path default_knowledge() { return STRANDLINE_KNOWLEDGE; }

Result<std::string> read_file(const std::filesystem::path& file, std::size_t bytes_max) {
  // Asked before it is opened: opening a pipe waits for somebody to write into it.
  std::error_code error;
  const auto status = std::filesystem::status(file, error);
  if (std::filesystem::exists(status) && !std::filesystem::is_regular_file(status)) {
    return tl::unexpected(Problems{{"not_a_file", "", {{"file", file.string()}}}});
  }
  std::ifstream in(file, std::ios::binary);
  std::string text;
  if (!in) return tl::unexpected(Problems{{"cannot_read", "", {{"file", file.string()}}}});
  std::vector<char> buffer(1u << 16);
  while (in.read(buffer.data(), static_cast<std::streamsize>(buffer.size())), in.gcount() > 0) {
    text.append(buffer.data(), static_cast<std::size_t>(in.gcount()));
    if (text.size() > bytes_max) {
      return tl::unexpected(
          Problems{{"document_too_large",
                    "",
                    {{"bytes", std::to_string(text.size()) + "+"}, {"max", std::to_string(bytes_max)}}}});
    }
  }
  if (in.bad()) return tl::unexpected(Problems{{"cannot_read", "", {{"file", file.string()}}}});
  return text;
}

Result<House> open_house(const HouseFiles& files) {
  const auto or_default = [&](const std::filesystem::path& given, const char* folder, const char* name) {
    return given.empty() ? files.knowledge / folder / name : given;
  };
  const auto shelf_file = or_default(files.shelf, "demo", "shelf.json");
  const auto as_written = +[](const wire::Json& json) -> Result<wire::Json> { return json; };
  auto shelf = read_known<Shelf>(shelf_file, wire::read_shelf);
  auto written = read_known<wire::Json>(shelf_file, as_written);
  auto classes = read_known<wire::Json>(files.knowledge / "shelf" / "classes.json", as_written);
  auto policy = read_known<Policy>(or_default(files.policy, "policy", "house.json"), wire::read_policy);
  auto doors = read_known<DoorRules>(files.knowledge / "policy" / "doors.json", read_door_rules);
  auto common =
      read_known<CommonPasswords>(files.knowledge / "policy" / "common_passwords.json", read_common_passwords);
  auto stock = read_known<StockRules>(files.knowledge / "policy" / "stock.json", read_stock_rules);
  auto amounts = read_known<AmountRules>(files.knowledge / "policy" / "amounts.json", read_amount_rules);
  auto diary = read_known<DiaryRules>(files.knowledge / "policy" / "diary.json", read_diary_rules);
  if (doors && common) doors->common = std::move(*common);
  if (amounts && policy) amounts->waste_share = policy->formula.waste_share;
  if (shelf && check(*shelf).empty()) learn(*shelf);
  if (shelf && policy && classes && written && doors && common && stock && amounts && diary)
    return House{std::move(*shelf),
                 std::move(*policy),
                 std::move(*written),
                 std::move(*classes),
                 std::move(*doors),
                 *stock,
                 *amounts,
                 *diary};
  Problems problems;
  if (!classes) problems = std::move(classes.error());
  if (!shelf) problems.insert(problems.end(), shelf.error().begin(), shelf.error().end());
  if (!policy) problems.insert(problems.end(), policy.error().begin(), policy.error().end());
  if (!doors) problems.insert(problems.end(), doors.error().begin(), doors.error().end());
  if (!common) problems.insert(problems.end(), common.error().begin(), common.error().end());
  if (!amounts) problems.insert(problems.end(), amounts.error().begin(), amounts.error().end());
  if (!stock) problems.insert(problems.end(), stock.error().begin(), stock.error().end());
  if (!diary) problems.insert(problems.end(), diary.error().begin(), diary.error().end());
  return tl::unexpected(std::move(problems));
}

wire::Sources House::sources() const {
  return {
      [this](const std::string& name) { return name.empty() || name == "demo" ? std::optional(demo) : std::nullopt; },
      [this](const std::string& name) {
        return name.empty() || name == "house" ? std::optional(policy) : std::nullopt;
      }};
}

}  // namespace strandline::salon
