#include "strandline/wire/picture.h"

#include <turbojpeg.h>

#include <algorithm>
#include <charconv>
#include <memory>

namespace strandline::wire {

namespace {

constexpr int kLongEnough = 1600;

tl::unexpected<Problems> refuse(const char* code, std::map<std::string, std::string> params = {}) {
  return tl::unexpected(Problems{{code, "", std::move(params)}});
}

Result<void> fits(int width, int height) {
  std::map<std::string, std::string> size{{"width", std::to_string(width)}, {"height", std::to_string(height)}};
  if (width < picture_side_min || height < picture_side_min) return refuse("picture_small", std::move(size));
  if (width > picture_side_max || height > picture_side_max ||
      static_cast<std::int64_t>(width) * height > picture_pixels_max)
    return refuse("picture_large", std::move(size));
  return {};
}

card::Picture empty(int width, int height) {
  return {width, height,
          std::vector<std::uint8_t>(3 * static_cast<std::size_t>(width) * static_cast<std::size_t>(height))};
}

Result<card::Picture> unpacked(std::string_view bytes) {
  const std::unique_ptr<void, int (*)(tjhandle)> reader(tjInitDecompress(), tjDestroy);
  if (!reader) return refuse("picture_broken", {{"what", "no reader"}});
  const auto* data = reinterpret_cast<const unsigned char*>(bytes.data());
  const auto trouble = [&] { return refuse("picture_broken", {{"what", tjGetErrorStr2(reader.get())}}); };
  int width = 0, height = 0, sampling = 0, colours = 0;
  if (tjDecompressHeader3(reader.get(), data, bytes.size(), &width, &height, &sampling, &colours) != 0 || width < 1 ||
      height < 1)
    return trouble();
  // Four inks are a printer's picture, not a photo.
  if (colours == TJCS_CMYK || colours == TJCS_YCCK) return refuse("picture_kind");
  return fits(width, height).and_then([&]() -> Result<card::Picture> {
    int part = 1;
    while (part < 4 && std::max(width, height) / (2 * part) >= kLongEnough) part *= 2;
    const tjscalingfactor scale{1, part};
    card::Picture out = empty(TJSCALED(width, scale), TJSCALED(height, scale));
    if (tjDecompress2(reader.get(), data, bytes.size(), out.rgb.data(), out.width, 0, out.height, TJPF_RGB,
                      TJFLAG_LIMITSCANS) != 0)
      return trouble();
    return out;
  });
}

// "P6", width, height, 255, blanks and comments between them; then the pixels.
Result<card::Picture> plain(std::string_view bytes) {
  std::size_t at = 2;
  const auto number = [&]() -> int {
    const auto blank = [](char c) { return c == ' ' || c == '\t' || c == '\n' || c == '\r'; };
    while (at < bytes.size() && (blank(bytes[at]) || bytes[at] == '#')) {
      if (bytes[at] == '#') at = std::min(bytes.find('\n', at), bytes.size() - 1);
      ++at;
    }
    int n = -1;
    const auto [end, error] = std::from_chars(bytes.data() + at, bytes.data() + bytes.size(), n);
    at = static_cast<std::size_t>(end - bytes.data());
    return error == std::errc() ? n : -1;
  };
  const int width = number(), height = number(), most = number();
  if (width < 1 || height < 1 || most != 255) return refuse("picture_broken", {{"what", "heading"}});
  return fits(width, height).and_then([&]() -> Result<card::Picture> {
    card::Picture out = empty(width, height);
    ++at;  // one blank after the last number
    if (at > bytes.size() || bytes.size() - at < out.rgb.size())
      return refuse("picture_broken", {{"what", "cut short"}});
    std::copy_n(bytes.begin() + static_cast<std::ptrdiff_t>(at), out.rgb.size(), out.rgb.begin());
    return out;
  });
}

}  // namespace

Result<card::Picture> read_picture(std::string_view bytes) {
  if (bytes.size() > (bytes.starts_with("P6") ? picture_file_bytes_max : picture_bytes_max))
    return refuse("picture_large", {{"bytes", std::to_string(bytes.size())}});
  if (bytes.starts_with("\xff\xd8\xff")) return unpacked(bytes);
  if (bytes.starts_with("P6")) return plain(bytes);
  return refuse("picture_kind");
}

}  // namespace strandline::wire
