#include "src/voice.h"

#include <ostream>
#include <sstream>

#include "en/sentences.h"
#include "src/print/problems.h"
#include "src/print/text.h"

namespace strandline::cli {

Voice::Voice(std::ostream& err, bool json, std::function<std::string()> now)
    : err_(err), json_(json), now_(std::move(now)) {}

void Voice::event(const wire::Json& event) { write(wire::print(event) + '\n'); }

void Voice::problems(const Problems& found) {
  if (!json_) {
    std::ostringstream text;
    text << "In the salon file:\n";
    print_lines(found, "", text);
    return write(text.str());
  }
  for (const Problem& problem : found)
    event({{"at", now_()},
           {"event", "trouble"},
           {"code", problem.code},
           {"said", printable(en::say(problem))},
           {"remedy", printable(en::remedy(problem))}});
}

void Voice::write(const std::string& text) {
  const std::lock_guard lock(mutex_);
  err_ << text << std::flush;
}

}  // namespace strandline::cli
