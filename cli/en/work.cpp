#include <array>

#include "en/sentences.h"

namespace strandline::cli::en {

namespace {

constexpr std::array sentences{
    // The salon file.
    Sentence{"store_unavailable", "The salon file cannot be used: {detail}.",
             "Nothing was written. Check the disk and that no other program holds the file."},
    Sentence{"store_newer", "The salon file was written by a newer program.", "Start the newer program."},
    Sentence{"visit_not_found", "There is no visit {id}.", "Open one from the list."},
    Sentence{"visit_changed_elsewhere", "Somebody saved this visit meanwhile (entry {seq}).",
             "Open it again and repeat your change; nothing was overwritten."},
    Sentence{"entry_id_taken", "Something else was saved under the id {id}.", "Give every save an id of its own."},
    Sentence{"not_an_id", "\"{id}\" cannot be the id of a save.", "Use 16 to 80 letters, digits, - and _."},
    // The shelf.
    Sentence{"shelf_is_empty", "The shelf holds no products.",
             "Add the salon's products, or write \"shelf\": \"demo\" to try."},
    Sentence{"shelf_too_large", "The shelf holds more than {max} products.", "Leave out what this salon does not use."},
    Sentence{"percent_out_of_range", "{value} % is outside {min} to {max}.",
             "Give the strength on the label, in % by weight."},
    Sentence{"ratio_out_of_range", "A ratio of 1 : {value} is outside {min} to {max}.",
             "Give grams of developer per gram of colour."},
    Sentence{"lift_out_of_range", "A lift factor of {value} is outside {min} to {max}.", "Permanent tint has 1."},
    Sentence{"reflectance_out_of_range", "A reflectance of {value} is outside {min} to {max}.",
             "Give shares of 1, not percent."},
    Sentence{"price_out_of_range", "A price of {value} per gram is outside {min} to {max}.", "Correct it."},
    // Bowls.
    Sentence{"unknown_range", "There is no range \"{range}\" on this shelf.", "Use the id of a range of the shelf."},
    Sentence{"unknown_product", "There is no product \"{product}\" on this shelf.",
             "Use the id of a product of the shelf."},
    Sentence{"grams_out_of_range", "{grams} g cannot be weighed.", "Give grams above 0 for every part."},
    Sentence{"two_makers_in_one_bowl", "{product} is of another maker than the rest of this bowl.",
             "Keep one maker per bowl."},
    Sentence{"empty_bowl", "The bowl is empty.", "Add at least one part."},
    Sentence{"nothing_in_the_bowl", "There is nothing in the bowl.", "Add at least one part above 0 g."},
    Sentence{"minutes_out_of_range", "{value} minutes are outside {min} to {max}.",
             "Use a time within the range's window."},
    Sentence{"zone_in_two_bowls", "{zone} is in two bowls of one step.",
             "Keep it in one of them, or give the later bowl the next step."},
    Sentence{"ratio_not_of_range", "Bowl {bowl}: a ratio of 1 : {ratio} is not one that the range allows.",
             "Mix by a ratio of the range's own instructions."},
    Sentence{"developer_not_of_range", "Bowl {bowl}: a developer of {percent} % is not one that the range allows.",
             "Use a strength of the range's own instructions."},
    Sentence{"longer_than_range_allows", "Bowl {bowl}: {minutes} minutes are longer than the range allows ({max}).",
             "Stay within the range's longest time."},
    Sentence{"two_ranges_in_one_bowl", "Bowl {bowl}: {product} is of another range than the bowl.",
             "Mix ranges only where their maker's directions allow it; nothing is known of such a mix."},
    Sentence{"developer_alone", "Bowl {bowl} holds no colour, only developer.", "Add a shade, or leave the bowl out."},
    Sentence{"weighed_out_of_range",
             "{value} g cannot have been weighed already: no bowl takes more than {most} g of it.",
             "Give the grams that are in the bowl, fewer than it was to have."},
    Sentence{"over_legal_limit", "Bowl {bowl} is over a legal limit.",
             "Do not use it; change its parts until it is within."},
    Sentence{"not_permitted_use", "Bowl {bowl} holds a substance that is not permitted for this use.",
             "Do not use it."},
    // Law arithmetic.
    Sentence{"not_an_amount", "An amount must be a number of 0 or more.", "Correct it."},
    Sentence{"not_a_percentage", "A percentage must lie in 0 to 100.", "Correct it."},
    Sentence{"not_a_strength", "The stock must have a strength above 0.", "Give the strength on its label."},
    Sentence{"not_a_density", "A density must be above 0.", "Give grams per millilitre."},
    Sentence{"not_stronger", "The stronger of the two is not stronger.", "Give the weaker one first."},
    Sentence{"outside_the_two_strengths", "The strength asked for lies outside the two that are mixed.",
             "Choose two around it."},
    Sentence{"stronger_than_the_stock", "Diluting cannot make it stronger than the stock.",
             "Start from a stronger stock."},
    Sentence{"part_not_planned", "That part is not in the plan.", "Weigh a part of this bowl."},
    Sentence{"empty_ratio", "A ratio needs at least one part above 0.", "Correct it."},
    Sentence{"substance_without_a_name", "A declared substance has neither CAS number nor entry.",
             "Give one of them as the label does."},
    Sentence{"entry_does_not_match", "The declared entry and CAS number name different substances.",
             "Check the label."},
    Sentence{"unknown_basis", "The form in which the percentage is declared is not known.",
             "Give it as the free base, or name a form of the list."},
    // The clock.
    Sentence{"clock_breaks", "{zone} would stay on {minutes} minutes too long.",
             "What would help: a second pair of hands {second_pair_of_hands}, another order {other_order}, "
             "wrapping what is off the "
             "scalp {packets}, developing for the shortest time {shorter_development}."},
    Sentence{"development_window_too_short",
             "The time between the shortest and the longest development of[ {zone}] is too short to apply it.",
             "Split the zone, or use a range with a wider window."},
    Sentence{"mix_life_too_short", "A mix for[ {zone}] would be too old before it is on.",
             "Split the zone so that each part has its own fresh mix."},
    Sentence{"nobody_can", "Nobody here can do this task[: {task}].",
             "Add a person with that skill, or give it to somebody."},
    Sentence{"leaves_too_late", "The client would leave[ {minutes} minutes] too late.",
             "Start earlier, plan less, or add hands."},
    Sentence{"search_stopped", "The clock's search was stopped before it found a plan.",
             "Fewer applications, or a higher node limit in the policy."},
    Sentence{"nothing_to_apply", "There is nothing to put on the clock.", "Plan at least one bowl."},
    Sentence{"too_many_applications", "There are too many applications for one clock.",
             "Merge zones that get the same bowl."},
    Sentence{"too_many_people", "There are too many people for one visit.", "Name those who work on this head."},
    Sentence{"id_missing", "A name is missing here.", "Give it a word of your own."},
    Sentence{"id_twice", "A name is used twice here.", "Give each its own name."},
    Sentence{"longer_than_a_day", "This takes longer than a day.", "Correct the minutes."},
    Sentence{"not_minutes", "Minutes must be 0 or more.", "Correct them."},
    Sentence{"target_below_minimum", "The planned time is shorter than the shortest development.",
             "Use a time within the range's window."},
    Sentence{"unknown_bowl", "An application names a bowl that is not there.", "Name one of the bowls."},
    Sentence{"window_backwards", "A time window ends before it starts.", "Swap its ends."},
};

}  // namespace

std::span<const Sentence> work_sentences() { return sentences; }

}  // namespace strandline::cli::en
