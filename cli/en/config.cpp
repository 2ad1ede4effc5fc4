#include <array>

#include "en/sentences.h"

namespace strandline::cli::en {

namespace {

constexpr std::array sentences{
    Sentence{"config_not_toml", "From here on this is no TOML: {detail}",
             "Keys stand below the name of their part, one a line, texts between quotes: port = 7407."},
    Sentence{"config_unknown_part", "There is no part {part}.", "[Did you mean {near}? ]There are: {known}."},
    Sentence{"config_unknown_key", "There is no {key} here.", "[Did you mean {near}? ]There are: {known}."},
    Sentence{"config_wrong_kind", "This is of another kind than what is needed.", "Write {wanted}."},
    Sentence{"config_out_of_range", "{value} is out of range.", "Write a whole number from {min} to {max}."},
    Sentence{"config_not_one_of", "\"{value}\" is no choice here.", "Write one of these: {words}."},
    Sentence{"config_not_whole_path", "\"{value}\" does not say where it begins.",
             "Write the whole path, from the / on."},
    Sentence{"config_here_only", "\"{value}\" is not this machine: there the server would speak in the clear.",
             "Write 127.0.0.1, ::1 or localhost; for other machines, encrypted, see listen in the part devices."},
    Sentence{"config_not_private", "\"{value}\" is no address of a private network.",
             "Write the address of this machine in the salon's network, or 0.0.0.0 for all it has."},
    Sentence{"config_alone", "This part says nothing without {needs}.", "Write {needs}, or take the part out."},
    Sentence{"config_needs", "The configuration does not say {needs}.", "Add it, or say it on the command line."},
    Sentence{"not_up", "The server at {address} is not up: {said}.", "Look at what it said: journalctl -u strandline."},
    Sentence{"no_copies", "There is no copy in {folder}.", "Make one with strandline backup."},
};

}  // namespace

std::span<const Sentence> config_sentences() { return sentences; }

}  // namespace strandline::cli::en
