#include <array>

#include "en/sentences.h"

namespace strandline::cli::en {

namespace {

constexpr std::array sentences{
    // The text itself.
    Sentence{"cannot_read", "The file {file} cannot be read.", "Check its name and that you may read it."},
    Sentence{"document_too_large", "The document has {bytes} bytes; at most {max} are read.",
             "A visit needs a few thousand bytes: is this the right file?"},
    Sentence{"invalid_utf8", "Byte {byte} (line {line}, column {column}) is not UTF-8.", "Save the file as UTF-8."},
    Sentence{"not_json", "This is not JSON from line {line}, column {column} on.",
             "Look for a missing comma, quote or bracket just before that place."},
    Sentence{"not_a_number", "Line {line}, column {column} holds no finite number.",
             "Write a number such as 5 or 0.35; leave the key out when nothing was read."},
    Sentence{"too_deep", "Lists and objects lie more than {max} deep.",
             "A visit document is never that deep: check its brackets."},
    Sentence{"duplicate_key", "The key \"{key}\" stands here twice.", "Keep the one that is right."},
    Sentence{"unknown_schema", "This is not a document of the kind {expected}.",
             "Write \"schema\": \"{expected}\" at its top."},
    // Shape.
    Sentence{"wrong_type", "Expected {expected}, found {found}.", "See `strandline schema` for what each key takes."},
    Sentence{"missing_key", "The key \"{key}\" is missing.", "Add it."},
    Sentence{"unknown_key", "There is no key \"{key}\"[; did you mean \"{nearest}\"?]",
             "Rename or remove it. Known here: {known}."},
    Sentence{"unknown_word", "\"{word}\" is not one of the words for this[; did you mean \"{nearest}\"?]",
             "Use one of: {words}."},
    Sentence{"unknown_name", "Nothing is known by the name \"{name}\".",
             "Write \"{nearest}\", or put the whole value here."},
    Sentence{"out_of_range", "[{value} is ]outside what is possible here[: {min} to {max}].", "Correct the number."},
    Sentence{"too_long", "The text is longer than {max} bytes.", "Shorten it."},
    Sentence{"too_many", "The list holds more than {max} entries.", "Shorten it."},
    Sentence{"wrong_count", "The list holds {found} numbers; it takes exactly {expected}.",
             "Give one per band, 400 to 700 nm in steps of 10."},
    Sentence{"bad_date", "\"{text}\" is no date.", "Write it as 2025-03-31."},
    Sentence{"control_character", "The text holds a control character.", "Type it again without line breaks or tabs."},
    Sentence{"populations_and_shorthand",
             "This span lists its populations and gives level, tone or white share in short as well.",
             "Keep one of the two."},
    Sentence{"no_wish", "The document has no wish.", "Give aims, so that there is something to judge the bowls by."},
    Sentence{"range_gives_no_colour", "{range} gives no colour of its own.",
             "Name a range of tints, demis or direct colour."},
    Sentence{"no_bowls", "The document has no bowls of its own.", "Add \"bowls\", or ask for a plan instead."},
    Sentence{"unknown_verb", "There is nothing called \"{verb}\" here.",
             "Ask for assess, aim, predict, formulate, schedule, plan, reach, fade, grow, what-if, review, "
             "convert or substitute."},
    // The head.
    Sentence{"head_has_no_areas", "The head has no areas.", "Describe at least one area with one span."},
    Sentence{"too_many_areas", "The head has more than {max} areas.", "Merge areas that are read alike."},
    Sentence{"area_has_no_spans", "The area {area} has no spans.", "Add at least one span from the scalp on."},
    Sentence{"zone_has_no_fibres", "This span says nothing about its fibres.",
             "Add its populations, or level, tone and white share in short."},
    Sentence{"name_missing", "A name is missing here.", "Give it a word of your own."},
    Sentence{"name_used_twice", "The name \"{name}\" is used twice.", "Give each its own name."},
    Sentence{"shares_do_not_add_up", "The shares of this span add to {sum}, not to 1.",
             "Correct them: every fibre is counted once."},
    Sentence{"share_out_of_range", "A share of {value} is outside {min} to {max}.",
             "Give the share of the fibres, 0 to 1."},
    Sentence{"level_out_of_range", "Level [{value}][{level}] is outside the scale[ {min} to {max}].",
             "Read again: 1 is black, 10 lightest blonde."},
    Sentence{"lab_out_of_range", "These L*a*b* numbers are no colour that hair can have.",
             "Measure again: L* 0 to 100, D65, 10 degrees."},
    Sentence{"doubt_out_of_range", "A doubt of {value} is outside {min} to {max}.",
             "Give one standard deviation in the unit of the reading."},
    Sentence{"porosity_out_of_range", "Porosity {value} is outside {min} to {max}.",
             "0 low, 1 average, 2 high, 3 very high."},
    Sentence{"resistance_out_of_range", "Resistance {value} is outside {min} to {max}.",
             "0 takes colour well, 1 is glassy white."},
    Sentence{"stretch_out_of_range", "A wet stretch of {value} % is outside {min} to {max}.",
             "Measure again on a wet strand."},
    Sentence{"weeks_out_of_range", "{value} weeks are outside {min} to {max}.",
             "Correct the number, or leave it out if it is not known."},
    Sentence{"length_out_of_range", "{value} cm is outside {min} to {max}.",
             "Measure along the stretched hair from the scalp."},
    Sentence{"span_has_no_length", "The span ends at {to} cm and starts at {from} cm.",
             "It must end farther from the scalp than it starts."},
    Sentence{"spans_overlap", "The span starts at {from} cm, before the one ahead of it ends ({before} cm).",
             "Let each start where the last ends."},
    Sentence{"scalp_area_out_of_range", "{value} cm² of scalp is outside {min} to {max}.",
             "A whole scalp has about 500 to 700 cm²; this area covers a part."},
    Sentence{"density_out_of_range", "A density of {value} is outside {min} to {max}.",
             "Correct it, or leave it out for average hair."},
    Sentence{"diameter_out_of_range", "A hair diameter of {value} µm is outside {min} to {max}.",
             "Correct it, or leave it out for average hair."},
    // Aims.
    Sentence{"aim_needs_one", "An aim says exactly one thing; this one says {given}.",
             "Give a shade, or a level with a tone, or L*a*b*, or \"leave\": true."},
    Sentence{"aim_missing", "The zone {zone} has no aim.", "Add one, or an aim for \"*\", or \"leave\": true."},
    Sentence{"unknown_zone", "There is no zone \"{zone}\" on this head.",
             "Write area/span as they are named in the head."},
    Sentence{"unknown_shade", "There is no shade \"{shade}\" on this shelf.",
             "Use the id of a colour product that has a swatch."},
};

}  // namespace

std::span<const Sentence> document_sentences() { return sentences; }

}  // namespace strandline::cli::en
