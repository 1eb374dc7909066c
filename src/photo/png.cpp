#include "photo/formats.h"

#include <png.h>

namespace thawslip::photo {
namespace {

/// Frees what libpng keeps, whichever way the function is left.
struct Image {
    png_image image{};
    Image() { image.version = PNG_IMAGE_VERSION; }
    Image(const Image&) = delete;
    Image& operator=(const Image&) = delete;
    ~Image() { png_image_free(&image); }
    PhotoFault fault() const { return {std::string{"the PNG is damaged: "} + image.message}; }
};

} // namespace

Result<code::GreyPicture, PhotoFault> decode_png(std::span<const std::uint8_t> bytes,
                                                 const Limits& limits) {
    Image png;
    if (png_image_begin_read_from_memory(&png.image, bytes.data(), bytes.size()) == 0) {
        return Failure{png.fault()};
    }
    if (auto why = refusal(png.image.width, png.image.height, limits); !why.empty()) {
        return Failure{PhotoFault{std::move(why)}};
    }
    png.image.format = PNG_FORMAT_GRAY;
    code::GreyPicture picture{
        static_cast<int>(png.image.width), static_cast<int>(png.image.height), {}};
    picture.pixels.resize(PNG_IMAGE_SIZE(png.image));
    const png_color white{255, 255, 255}; // what is transparent is paper
    if (png_image_finish_read(&png.image, &white, picture.pixels.data(), 0, nullptr) == 0) {
        return Failure{png.fault()};
    }
    return picture;
}

} // namespace thawslip::photo
