#include <chrono>
#include <memory>
#include <ostream>

#include "src/commands.h"
#include "src/print/problems.h"
#include "src/print/text.h"
#include "strandline/salon/scale.h"

namespace strandline::cli {

namespace {

struct WeighFlags {
  std::string device, form = "sent";
  int baud = 9600;
  double seconds = 60;
  bool all = false;
};

const char* word_of(ScaleState state) {
  switch (state) {
    case ScaleState::stable:
      return "stable";
    case ScaleState::moving:
      return "moving";
    case ScaleState::below_zero:
      return "below zero";
    case ScaleState::overload:
      return "too much on it";
    case ScaleState::fault:
      return "fault";
  }
  return "";
}

int weigh(const WeighFlags& flags, Session& session) {
  using Clock = std::chrono::steady_clock;
  auto scale = salon::Scale::open(flags.device, salon::scale_form(flags.form), flags.baud);
  if (!scale) {
    print_problems(scale.error(), flags.device, session.io.err);
    return failed;
  }
  const auto end = Clock::now() + std::chrono::duration<double>(flags.seconds);
  std::optional<ScaleReading> last;
  while (Clock::now() < end) {
    const auto heard = scale->wait(std::chrono::milliseconds(200));
    if (!heard) {
      print_problems(heard.error(), flags.device, session.io.err);
      return failed;
    }
    for (const ScaleReading& reading : *heard) {
      if (reading == last || (!flags.all && reading.state == ScaleState::moving)) continue;
      last = reading;
      session.io.out << number(reading.grams) << " g  " << word_of(reading.state) << std::endl;
    }
  }
  if (last) return done;
  print_problems({{"scale_silent", "", {{"file", flags.device}}}}, flags.device, session.io.err);
  return failed;
}

}  // namespace

void add_weigh(CLI::App& app, Session& session) {
  const auto flags = std::make_shared<WeighFlags>();
  CLI::App* command = app.add_subcommand("weigh", "what a scale says, in grams: a line whenever it has settled anew");
  command->add_option("DEVICE", flags->device, "a serial line (/dev/ttyUSB0) or a raw USB node (/dev/hidraw0)")
      ->required();
  command->add_option("--form", flags->form, "sent: by itself; asked: on SI; usb: weighing devices of USB")
      ->check(CLI::IsMember({"sent", "asked", "usb"}));
  command->add_option("--baud", flags->baud, "of a serial line (default 9600)");
  command->add_option("--seconds", flags->seconds, "how long to listen (default 60)")->check(CLI::Range(0.0, 86400.0));
  command->add_flag("--all", flags->all, "readings too that have not settled; none of these may be booked");
  command->callback([flags, &session] { session.exit_code = weigh(*flags, session); });
}

}  // namespace strandline::cli
