#include "strandline/wire/picture.h"

#include <gtest/gtest.h>
#include <turbojpeg.h>

#include <cmath>

namespace strandline::wire {
namespace {

card::Picture shaded(int width, int height) {
  card::Picture p{width, height, {}};
  for (int y = 0; y < height; ++y)
    for (int x = 0; x < width; ++x)
      for (const int v : {255 * x / width, 255 * y / height, 90}) p.rgb.push_back(static_cast<std::uint8_t>(v));
  return p;
}

std::string jpeg(const card::Picture& p, int flags = 0) {
  tjhandle writer = tjInitCompress();
  unsigned char* bytes = nullptr;
  unsigned long size = 0;
  EXPECT_EQ(tjCompress2(writer, p.rgb.data(), p.width, 0, p.height, TJPF_RGB, &bytes, &size, TJSAMP_420, 92, flags), 0);
  std::string out(reinterpret_cast<char*>(bytes), size);
  tjFree(bytes);
  tjDestroy(writer);
  return out;
}

std::string code(std::string_view bytes) {
  const auto read = read_picture(bytes);
  return read ? "" : read.error().at(0).code;
}

TEST(Picture, IsUnpackedAtAPartOfItsSize) {
  for (const int flags : {0, TJFLAG_PROGRESSIVE}) {
    const auto read = read_picture(jpeg(shaded(3300, 2000), flags));
    ASSERT_TRUE(read) << read.error()[0].code;
    EXPECT_EQ(read->width, 1650);
    EXPECT_EQ(read->height, 1000);
    ASSERT_EQ(read->rgb.size(), 3u * 1650 * 1000);
    const size_t middle = 3 * (500u * 1650 + 825);
    EXPECT_NEAR(read->rgb[middle], 127, 4);
    EXPECT_NEAR(read->rgb[middle + 1], 127, 4);
    EXPECT_NEAR(read->rgb[middle + 2], 90, 4);
  }
  EXPECT_EQ(read_picture(jpeg(shaded(1200, 900)))->width, 1200);
}

TEST(Picture, IsReadAsItStandsWhereItIsNotPacked) {
  const card::Picture p = shaded(420, 400);
  const std::string pixels(p.rgb.begin(), p.rgb.end());
  const auto read = read_picture("P6\n# invented\n420 400\n255\n" + pixels);
  ASSERT_TRUE(read) << read.error()[0].code;
  EXPECT_EQ(read->rgb, p.rgb);
  EXPECT_EQ(code("P6 420 400 255\n" + pixels.substr(1)), "picture_broken");
  EXPECT_EQ(code("P6 420 400 65535\n" + pixels), "picture_broken");
  EXPECT_EQ(code("P6 420"), "picture_broken");
  EXPECT_EQ(code("P6 #"), "picture_broken");
  EXPECT_EQ(code("P6 99999999999 400 255\n"), "picture_broken");
}

TEST(Picture, IsRefusedByKindAndSizeBeforeItIsUnpacked) {
  EXPECT_EQ(code(""), "picture_kind");
  EXPECT_EQ(code("\x89PNG\r\n"), "picture_kind");
  EXPECT_EQ(code(std::string("\xff\xd8\xff\xe0", 4)), "picture_broken");
  EXPECT_EQ(code(jpeg(shaded(300, 900))), "picture_small");
  EXPECT_EQ(code("P6 16000 16000 255\n"), "picture_large");
  EXPECT_EQ(code(std::string(picture_bytes_max + 1, '\xff')), "picture_large");
  std::string cut = jpeg(shaded(800, 600));
  cut.resize(cut.size() / 2);
  EXPECT_EQ(code(cut), "picture_broken");
  // A heading that says more than is there: refused by its size, nothing of that size is set aside.
  std::string huge = jpeg(shaded(800, 600));
  const size_t frame = huge.find("\xff\xc0");
  ASSERT_NE(frame, std::string::npos);
  huge[frame + 5] = '\x3f', huge[frame + 7] = '\x3f';
  EXPECT_EQ(code(huge), "picture_large");
}

}  // namespace
}  // namespace strandline::wire
