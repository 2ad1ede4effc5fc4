// Pictures from outside: a photo's bytes as pixels, guarded by kind and size before anything is unpacked.
#pragma once

#include <string_view>

#include "strandline/card.h"
#include "strandline/result.h"

namespace strandline::wire {

inline constexpr std::size_t picture_bytes_max = 24u << 20, picture_file_bytes_max = 100u << 20;  // packed, and not
inline constexpr int picture_side_min = 400, picture_side_max = 16384, picture_pixels_max = 32'000'000;

// A JPEG photo, or a picture that is not packed (binary PPM, P6, 255). Large photos are unpacked at a half or a quarter
// of their size, never below 1600 pixels on the long side. Problems: picture_kind (neither) · picture_large {bytes or
// width, height} · picture_small {width, height} · picture_broken {what}.
Result<card::Picture> read_picture(std::string_view bytes);

}  // namespace strandline::wire
