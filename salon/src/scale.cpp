#include "strandline/salon/scale.h"

#include <fcntl.h>
#include <poll.h>
#include <termios.h>
#include <unistd.h>

#include <array>
#include <cerrno>
#include <utility>

namespace strandline::salon {
namespace {

std::optional<speed_t> speed_of(int baud) {
  constexpr std::array<std::pair<int, speed_t>, 7> known{
      {{600, B600}, {1200, B1200}, {2400, B2400}, {4800, B4800}, {9600, B9600}, {19200, B19200}, {38400, B38400}}};
  for (const auto& [rate, speed] : known)
    if (rate == baud) return speed;
  return std::nullopt;
}

// Bytes as they are: no echo, no signs of a terminal.
bool make_raw(int file, speed_t speed) {
  termios line{};
  if (tcgetattr(file, &line) != 0) return false;
  cfmakeraw(&line);
  line.c_cflag |= CLOCAL | CREAD;
  return cfsetispeed(&line, speed) == 0 && cfsetospeed(&line, speed) == 0 && tcsetattr(file, TCSANOW, &line) == 0;
}

Problems gone() { return {{"scale_gone", "", {}}}; }

}  // namespace

ScaleForm scale_form(std::string_view word) {
  return word == "usb" ? ScaleForm::usb : word == "asked" ? ScaleForm::asked : ScaleForm::sent;
}

Result<Scale> Scale::open(const std::string& device, ScaleForm form, int baud) {
  const auto speed = speed_of(baud);
  if (!speed) return tl::unexpected(Problems{{"unknown_baud", "", {{"baud", std::to_string(baud)}}}});
  const int access = form == ScaleForm::asked ? O_RDWR : O_RDONLY;
  const int file = ::open(device.c_str(), access | O_NOCTTY | O_NONBLOCK | O_CLOEXEC);
  if (file < 0 || (form != ScaleForm::usb && !make_raw(file, *speed))) {
    if (file >= 0) ::close(file);
    return tl::unexpected(Problems{{"cannot_read", "", {{"file", device}}}});
  }
  return Scale(file, form);
}

Scale::~Scale() {
  if (file_ >= 0) ::close(file_);
}

Scale::Scale(Scale&& other) noexcept
    : file_(std::exchange(other.file_, -1)), form_(other.form_), lines_(std::move(other.lines_)) {}

Result<std::vector<ScaleReading>> Scale::wait(std::chrono::milliseconds most) {
  if (form_ == ScaleForm::asked && ::write(file_, kAskWeight.data(), kAskWeight.size()) < 0 && errno != EAGAIN)
    return tl::unexpected(gone());
  std::vector<ScaleReading> out;
  const auto end = std::chrono::steady_clock::now() + most;
  while (out.empty()) {
    const auto left = std::chrono::duration_cast<std::chrono::milliseconds>(end - std::chrono::steady_clock::now());
    if (left.count() <= 0) return out;
    pollfd ready{file_, POLLIN, 0};
    const int found = ::poll(&ready, 1, static_cast<int>(left.count()));
    if (found == 0 || (found < 0 && errno == EINTR)) continue;
    std::array<char, 256> bytes{};
    const auto n = ::read(file_, bytes.data(), bytes.size());
    if (n < 0 && (errno == EAGAIN || errno == EINTR)) continue;
    if (n <= 0) return tl::unexpected(gone());
    const std::string_view text(bytes.data(), static_cast<std::size_t>(n));
    if (form_ != ScaleForm::usb) {
      out = lines_.take(text);
    } else if (const auto reading =
                   read_usb_report({reinterpret_cast<const std::uint8_t*>(text.data()), text.size()})) {
      out.push_back(*reading);  // the system gives one report at a time
    }
  }
  return out;
}

}  // namespace strandline::salon
