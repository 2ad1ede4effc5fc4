#include <unistd.h>

#include <csignal>
#include <cstdlib>
#include <iostream>
#include <string_view>

#include "src/app.h"

int main(int argc, char** argv) {
  std::signal(SIGXFSZ, SIG_IGN);  // a file that may not grow is an error to tell, not an end
  const char* said = std::getenv("COLORTERM");
  const std::string_view colour = said ? said : "";
  const bool true_colour = (colour == "truecolor" || colour == "24bit") && isatty(STDOUT_FILENO) == 1;
  strandline::cli::Io io{std::cin, std::cout, std::cerr, true_colour};
  return strandline::cli::run({argv + 1, argv + argc}, io);
}
