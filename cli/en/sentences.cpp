#include "en/sentences.h"

namespace strandline::cli::en {

namespace {

// The noun that `text` begins with, without the s of several; empty where it begins otherwise.
std::string_view one_of(std::string_view text) {
  for (const std::string_view noun : {" levels", " minutes", " weeks", " visits", " zones", " bowls", " packets"})
    if (text.starts_with(noun)) return text.substr(0, noun.size() - 1);
  return "";
}

// "{key}" becomes the parameter. A part in [square brackets] is left out when one of its parameters is absent
// or empty. One of a thing is "1 level", not "1 levels".
std::string fill(std::string_view text, const Problem& problem) {
  std::string out;
  for (std::size_t i = 0; i < text.size(); ++i) {
    if (text[i] == '[') {
      const std::size_t end = text.find(']', i);
      const std::string part = fill(text.substr(i + 1, end - i - 1), problem);
      if (part.find('\x01') == std::string::npos) out += part;
      i = end;
    } else if (text[i] == '{') {
      const std::size_t end = text.find('}', i);
      const auto found = problem.params.find(std::string(text.substr(i + 1, end - i - 1)));
      const bool known = found != problem.params.end() && !found->second.empty();
      // A parameter may itself be a code: the rule that a ceiling comes from.
      const Sentence* nested = known && found->first == "rule" ? find(found->second) : nullptr;
      const bool one = known && (found->second == "1" || found->second == "1.0");
      const std::string_view noun = one ? one_of(text.substr(end + 1)) : "";
      out += nested ? fill(nested->text, problem) : !noun.empty() ? "1" : known ? found->second : "\x01";
      i = end;
      out += noun;
      if (!noun.empty()) i += noun.size() + 1;
    } else {
      out += text[i];
    }
  }
  return out;
}

std::string filled(std::string_view text, const Problem& problem) {
  std::string out = fill(text, problem);
  for (char& c : out) {
    if (c == '\x01') c = '?';
  }
  return out;
}

}  // namespace

const Sentence* find(std::string_view code) {
  for (const auto& table : {document_sentences(), work_sentences(), reason_sentences(), after_sentences(),
                            rule_sentences(), door_sentences(), learned_sentences(), config_sentences()}) {
    for (const Sentence& s : table) {
      if (s.code == code) return &s;
    }
  }
  return nullptr;
}

std::string say(const Problem& problem) {
  if (const Sentence* s = find(problem.code)) return filled(s->text, problem);
  std::string out = problem.code;
  for (const auto& [key, value] : problem.params) out += ' ' + key + '=' + value;
  return out;
}

std::string remedy(const Problem& problem) {
  const Sentence* s = find(problem.code);
  return s ? filled(s->remedy, problem) : "";
}

}  // namespace strandline::cli::en
