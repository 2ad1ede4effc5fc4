#include <array>

#include "en/sentences.h"

namespace strandline::cli::en {

namespace {

constexpr std::array sentences{
    Sentence{"owner_first", "The salon has no owner yet, and the first of its people is one.",
             "Add the owner first: strandline people add NAME --role owner --zone Europe/Vienna."},
    Sentence{"already_founded", "The salon has an owner already.", "Sign in; an owner adds further people."},
    Sentence{"unknown_time_zone", "\"{zone}\" is no time zone.", "Write it as Europe/Vienna."},
    Sentence{"unknown_role", "\"{word}\" is no role.", "Use colourist, assistant, apprentice, manager or owner."},
    Sentence{"passphrase_short", "The passphrase is too short: at least {min} signs.",
             "Take a few words that do not belong together; no sign is prescribed."},
    Sentence{"passphrase_plain", "This passphrase is guessed at once: the name, or a few signs again and again.",
             "Take a few words that do not belong together."},
    Sentence{"passphrases_differ", "The two passphrases are not the same.", "Type it again."},
    Sentence{"pin_not_digits", "A PIN has at least {min} digits and nothing else.", "Choose another."},
    Sentence{"pin_plain", "Digits in a row, or all the same, are tried first.", "Choose others."},
    Sentence{"name_taken", "Somebody is called {name} already.", "Add a letter of the family name."},
    Sentence{"person_not_found", "Nobody here is called {id}.", "See strandline people list."},
    Sentence{"device_not_found", "There is no paired device {id}.", "Load the list again."},
    Sentence{"last_owner", "This is the only owner.", "Make somebody else an owner first."},
    Sentence{"not_your_role", "Your role does not do this.", "Ask an owner of the salon."},
    Sentence{"not_signed_in", "Nobody is signed in.", "Sign in."},
    Sentence{"wrong_secret", "Name and passphrase do not belong together.", "Try again."},
    Sentence{"try_later", "Too many tries.", "Wait {seconds} s."},
    Sentence{"not_paired", "This device is not paired.", "An owner pairs it: People, Devices, at the salon's machine."},
    Sentence{"invitation_gone", "This code lets nobody in: it was used, is over, or another one came after it.",
             "Ask an owner for a new one."},
    Sentence{"no_other_machines", "This salon answers on its own machine only.",
             "Start it with strandline serve --listen 0.0.0.0 to let paired devices in, encrypted."},
    Sentence{"authority_unreadable", "{detail} is no authority of this salon, or cannot be read.",
             "Put the right file back. Without it every device has to be told to trust a new one: move it away, and "
             "one is made."},
    Sentence{"passphrase_needed", "This is not done on a PIN.", "Sign in with the passphrase."},
    Sentence{"another_name", "This is not the name of that person.", "Type it as it stands there."},
    Sentence{"cannot_write", "{file} cannot be written.", "Look at its folder and at the room on the disk."},
    Sentence{"not_sure", "Nothing was erased: {id} would be gone for good.", "Say --yes."},
    Sentence{"authority_expired", "The salon's authority in {detail} is at its end.",
             "Move the file away: a new one is made, which every device has to be told to trust."},
    Sentence{"authority_unwritable", "{detail} cannot be written.", "Look at its folder and at the room on the disk."},
};

}  // namespace

std::span<const Sentence> door_sentences() { return sentences; }

}  // namespace strandline::cli::en
