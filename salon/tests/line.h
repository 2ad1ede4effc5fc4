// A pseudo-terminal stands for the line to a scale.
#pragma once

#include <fcntl.h>
#include <gtest/gtest.h>
#include <stdlib.h>
#include <unistd.h>

#include <string>

namespace strandline::salon {

// The scale's end of the line.
class Line {
 public:
  Line() : file_(posix_openpt(O_RDWR | O_NOCTTY)) {
    EXPECT_EQ(grantpt(file_), 0);
    EXPECT_EQ(unlockpt(file_), 0);
    name = ptsname(file_);
  }
  ~Line() { hang_up(); }
  Line(const Line&) = delete;
  Line& operator=(const Line&) = delete;

  void say(const std::string& text) {
    EXPECT_EQ(write(file_, text.data(), text.size()), static_cast<ssize_t>(text.size()));
  }
  std::string hear(std::size_t bytes) {
    std::string text(bytes, ' ');
    EXPECT_EQ(read(file_, text.data(), bytes), static_cast<ssize_t>(bytes));
    return text;
  }
  void hang_up() {
    if (file_ >= 0) close(file_);
    file_ = -1;
  }

  std::string name;

 private:
  int file_;
};

}  // namespace strandline::salon
