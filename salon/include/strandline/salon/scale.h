// A scale on the counter: a serial line or a USB weighing device, read by the computer that stands beside it.
#pragma once

#include <chrono>
#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "strandline/result.h"
#include "strandline/weigh.h"

namespace strandline::salon {

enum class ScaleForm { sent, asked, usb };  // as weigh.h tells them apart
// "usb", "asked"; any other word is `sent`.
ScaleForm scale_form(std::string_view word);

class Scale {
 public:
  // `device` as the system names it: a serial line (/dev/ttyUSB0, set to 8 data bits, no parity, `baud`) or, for `usb`,
  // a raw HID node (/dev/hidraw0). Problems: cannot_read {file} · unknown_baud {baud}.
  static Result<Scale> open(const std::string& device, ScaleForm form, int baud = 9600);
  ~Scale();
  Scale(Scale&& other) noexcept;
  Scale(const Scale&) = delete;
  Scale& operator=(const Scale&) = delete;
  Scale& operator=(Scale&&) = delete;

  // What it says within `most`, oldest first; empty when it is silent. An `asked` scale is asked first. Problem
  // scale_gone when it was unplugged.
  Result<std::vector<ScaleReading>> wait(std::chrono::milliseconds most);

 private:
  Scale(int file, ScaleForm form) : file_(file), form_(form) {}

  int file_;
  ScaleForm form_;
  ScaleLines lines_;
};

}  // namespace strandline::salon
