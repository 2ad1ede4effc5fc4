#include <array>

#include "en/sentences.h"

namespace strandline::cli::en {

namespace {

constexpr std::array sentences{
    // What results taught. {whose} is salon, colourist, range or person.
    Sentence{"learned_deeper", "The {whose} {id} takes colour {levels} levels deeper than reckoned.", ""},
    Sentence{"learned_lighter", "The {whose} {id} takes colour {levels} levels lighter than reckoned.", ""},
    Sentence{"learned_lifts_more", "The {whose} {id} lifts {levels} levels more than reckoned.", ""},
    Sentence{"learned_lifts_less", "The {whose} {id} lifts {levels} levels less than reckoned.", ""},
    Sentence{"learned_warmer", "The {whose} {id} comes out warmer than reckoned.", ""},
    Sentence{"learned_cooler", "The {whose} {id} comes out cooler than reckoned.", ""},
    Sentence{"learned_reads_light", "The {whose} {id} reads {levels} levels lighter than the others.", ""},
    Sentence{"learned_reads_dark", "The {whose} {id} reads {levels} levels darker than the others.", ""},
    Sentence{"result_not_found", "There is no result {id} that was learned from.", "See strandline learned."},
    Sentence{"result_unreadable", "The result is not as results are written now.", "Tell it again as a correction."},
    Sentence{"result_of_a_draft", "Its visit is still a draft.", "Hand the visit in; then it is learned from."},
    Sentence{"result_without_bowls", "Nobody told what was mixed.", "Tell what was mixed at the visit."},
    // Measurement files.
    Sentence{"measured_other_light",
             "The file's L*a*b* are for {light}, not for daylight D65 and 10°: taken as they are.",
             "Export spectra where the instrument can; they are worked out for D65 here."},
    Sentence{"measured_nothing", "The file has neither spectra nor L*a*b*.",
             "It needs columns with wavelengths from 400 to 700 nm, or L*, a* and b*."},
    Sentence{"measured_impossible", "Line {line}: {field} cannot be {got}.", "Measure again, or mend the number."},
    Sentence{"lab_typed", "\"{got}\" is not L*a*b*.", "Write three numbers: 54.2 8.1 19.6."},
    // Photos of the card.
    Sentence{"card_not_found", "The card is not in the picture, or not whole.",
             "All four corner marks must be seen, sharp and without a shadow across them."},
    Sentence{"card_small", "The card is too small in the picture: {pixels} pixels across a patch.", "Go nearer."},
    Sentence{"card_picture", "The picture has no pixels.", "Take it again."},
    Sentence{"card_clipped", "The card's white is at its brightest.", "Take it again with less light on the card."},
    Sentence{"card_dark", "The card is too dark.", "Take it again with more light on the card."},
    Sentence{"card_uneven", "The light falls off over the card.",
             "Turn the card to the window, away from lamps near by."},
    Sentence{"card_strand_clipped", "The strand is at the end of what the photo can tell.",
             "Take it again under a whiter lamp or by daylight, with more light or less."},
    Sentence{"card_patches_missing", "{count} patches of the card are not in its file: {ids} …",
             "Name the samples as the card's rows and columns: A2 to F8."},
    Sentence{"picture_kind", "This is no photo that can be read.", "Give a JPEG, or a binary PPM of 8 bits."},
    Sentence{"picture_large", "The photo is too large.", "At most 24 MB and 32 million pixels."},
    Sentence{"picture_small", "The photo is too small: {width} × {height} pixels.", "At least 400 each way."},
    Sentence{"picture_broken", "The photo cannot be unpacked: {what}.", "Copy it again from the camera."},
    Sentence{"lab_no_columns", "Line {line}: there is no column {field}.", "Name columns LAB_L, LAB_A, LAB_B."},
    Sentence{"lab_number", "Line {line}: {field} \"{got}\" is no number.", "Mend the number."},
    Sentence{"table_no_heading", "There is no heading with columns, or nothing under it.",
             "Give a heading, columns parted by tabs, semicolons or commas, and one sample a line."},
    Sentence{"table_row_length", "Line {line} has {got} cells under {expected} columns.", "Mend the line."},
    Sentence{"spectrum_no_columns", "Line {line}: there are no columns of wavelengths.",
             "Name columns by their wavelength: 400, SPEC_400 or 400 nm."},
    Sentence{"spectrum_wavelengths", "Line {line}: which wavelengths the columns are for is not clear.",
             "Name each column by its wavelength in nm, each once."},
    Sentence{"spectrum_number", "Line {line}: {field} \"{got}\" is no number.", "Mend the number."},
    Sentence{"spectrum_norm", "Line {line}: SPECTRAL_NORM \"{got}\" is no number above 0.", "Write 1 or 100."},
    Sentence{"spectrum_range", "Line {line}: the spectrum covers {got} nm; {expected} nm are needed.",
             "Measure with an instrument that covers them, or give L*a*b*."},
    Sentence{"cgats_too_large", "The file has more than {expected} bytes.", "Export fewer samples."},
    Sentence{"cgats_not_text", "The file is not text.", "Export as text."},
    Sentence{"cgats_quote_open", "Line {line}: a quotation mark is not closed.", "Close it."},
    Sentence{"cgats_stray_end", "Line {line}: an end without its beginning.", "Export the file again."},
    Sentence{"cgats_too_many_keywords", "Line {line}: too many keywords.", "Export the file again."},
    Sentence{"cgats_format_open", "Line {line}: the format of the data does not end.", "Export the file again."},
    Sentence{"cgats_too_many_fields", "Line {line}: more than {expected} fields.", "Export fewer fields."},
    Sentence{"cgats_field_twice", "Line {line}: the field {field} is there twice.", "Name each field once."},
    Sentence{"cgats_no_fields", "Line {line}: data without a format.", "Export the file again."},
    Sentence{"cgats_too_many_rows", "Line {line}: more than {expected} samples.", "Export fewer samples."},
    Sentence{"cgats_row_length", "Line {line} has {got} values for {expected} fields.", "Mend the line."},
    Sentence{"cgats_too_many_tables", "Line {line}: too many tables.", "Export fewer tables."},
    Sentence{"cgats_count", "Line {line}: {field} says {expected}, there are {got}.", "Export the file again."},
    Sentence{"cgats_data_open", "Line {line}: the data do not end.", "The file was cut: export it again."},
    Sentence{"cgats_no_table", "The file has no table.", "Export it again, with its data."},
};

}  // namespace

std::span<const Sentence> learned_sentences() { return sentences; }

}  // namespace strandline::cli::en
