#include "src/unseen.h"

#include <termios.h>
#include <unistd.h>

#include <array>
#include <csignal>

namespace strandline::cli {

namespace {

constexpr std::array ends{SIGINT, SIGTERM, SIGHUP, SIGQUIT, SIGTSTP};
termios before{};  // read by the handler, which may use nothing else
std::array<struct sigaction, ends.size()> handlers{};

// As if nobody had listened: the terminal is put back, then the signal does what it does.
void put_back(int signal) {
  tcsetattr(STDIN_FILENO, TCSANOW, &before);
  std::signal(signal, SIG_DFL);
  raise(signal);
}

}  // namespace

Unseen::Unseen(bool typed) : on_(typed && tcgetattr(STDIN_FILENO, &before) == 0) {
  if (!on_) return;
  struct sigaction handler{};
  handler.sa_handler = put_back;
  for (std::size_t i = 0; i < ends.size(); ++i) sigaction(ends[i], &handler, &handlers[i]);
  termios quiet = before;
  quiet.c_lflag &= ~static_cast<tcflag_t>(ECHO);
  tcsetattr(STDIN_FILENO, TCSANOW, &quiet);
}

Unseen::~Unseen() {
  if (!on_) return;
  tcsetattr(STDIN_FILENO, TCSANOW, &before);
  for (std::size_t i = 0; i < ends.size(); ++i) sigaction(ends[i], &handlers[i], nullptr);
}

}  // namespace strandline::cli
