// `weigh`: what a scale says, read into grams. Pure: bytes in, readings out; doors own the devices.
//
// Three spoken forms, each from a public description:
//   usb   USB HID Point of Sale usage tables 1.02 (USB Implementers' Forum, 2001), weighing devices, usage page 0x8D
//   sent  lines that a scale sends by itself: weight right-justified, a space, unit, "?" where it has not settled
//   asked lines that answer the commands S (when stable) and SI (at once): command, stability mark, sign, weight, unit
// Only a reading that is stable may be booked.
#pragma once

#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace strandline {

enum class ScaleState { stable, moving, below_zero, overload, fault };

struct ScaleReading {
  double grams = 0;  // 0 where `state` is overload or fault
  ScaleState state = ScaleState::fault;
  bool operator==(const ScaleReading&) const = default;
};

// A data report: id 3, status, unit, exponent of ten, weight low and high byte. Drivers that drop the id give five
// bytes. Nothing = no weight report, or a unit that is no mass.
std::optional<ScaleReading> read_usb_report(std::span<const std::uint8_t> report);

// One line of either serial form, without its end. Nothing = not a weight: another command's answer, a heading, noise.
std::optional<ScaleReading> read_scale_line(std::string_view line);

// Bytes as they come from a line, in any portions: each whole line that is a weight gives a reading. Lines end with CR,
// LF or both; one longer than 64 bytes is dropped whole.
class ScaleLines {
 public:
  std::vector<ScaleReading> take(std::string_view bytes);

 private:
  std::string line_;
  bool too_long_ = false;
};

// What to write to a scale of the `asked` form for its weight at once.
inline constexpr std::string_view kAskWeight = "SI\r\n";

}  // namespace strandline
