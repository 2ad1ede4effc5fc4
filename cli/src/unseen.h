// A terminal that does not show what is typed.
#pragma once

namespace strandline::cli {

// Nothing typed is shown while this lives, where a person types it. Whatever ends the program meanwhile (Ctrl-C, a
// polite kill) leaves the terminal as it was. One at a time.
class Unseen {
 public:
  explicit Unseen(bool typed);
  ~Unseen();
  Unseen(const Unseen&) = delete;
  Unseen& operator=(const Unseen&) = delete;

 private:
  bool on_;
};

}  // namespace strandline::cli
