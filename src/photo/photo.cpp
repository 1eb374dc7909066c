#include "photo/photo.h"

#include "photo/formats.h"

#include <algorithm>
#include <array>
#include <fmt/format.h>
#include <string_view>

namespace thawslip::photo {
namespace {

template <std::size_t N>
bool starts_with(std::span<const std::uint8_t> bytes, const std::array<std::uint8_t, N>& magic) {
    return bytes.size() >= N && std::equal(magic.begin(), magic.end(), bytes.begin());
}

constexpr std::array<std::uint8_t, 8> png_magic = {0x89, 'P', 'N', 'G', '\r', '\n', 0x1A, '\n'};
constexpr std::array<std::uint8_t, 3> jpeg_magic = {0xFF, 0xD8, 0xFF};

/// Whether it is a picture in the High Efficiency Image File Format (ISO/IEC 23008-12): a box
/// "ftyp" of one of its brands stands first. The brands are from memory.
bool is_heif(std::span<const std::uint8_t> bytes) {
    constexpr std::size_t header = 12;
    constexpr std::array<std::string_view, 9> brands = {"heic", "heix", "heim", "heis", "hevc",
                                                        "hevx", "mif1", "msf1", "avif"};
    if (bytes.size() < header) {
        return false;
    }
    const std::string text{bytes.begin() + 4, bytes.begin() + header};
    return text.starts_with("ftyp") &&
           std::ranges::find(brands, std::string_view{text}.substr(4)) != brands.end();
}

/// Every four pixels as one: their mean.
code::GreyPicture halved(const code::GreyPicture& picture) {
    code::GreyPicture half{picture.width / 2, picture.height / 2, {}};
    half.pixels.reserve(static_cast<std::size_t>(half.width) *
                        static_cast<std::size_t>(half.height));
    const auto at = [&picture](int x, int y) {
        return static_cast<unsigned>(picture.pixels[picture.index(x, y)]);
    };
    for (int y = 0; y < half.height; ++y) {
        for (int x = 0; x < half.width; ++x) {
            const unsigned sum = at(2 * x, 2 * y) + at(2 * x + 1, 2 * y) + at(2 * x, 2 * y + 1) +
                                 at(2 * x + 1, 2 * y + 1);
            half.pixels.push_back(static_cast<std::uint8_t>((sum + 2) / 4));
        }
    }
    return half;
}

std::uint64_t pixels(const code::GreyPicture& picture) {
    return static_cast<std::uint64_t>(picture.width) * static_cast<std::uint64_t>(picture.height);
}

} // namespace

std::string refusal(std::uint64_t width, std::uint64_t height, const Limits& limits) {
    if (width == 0 || height == 0) {
        return "the picture has no pixels";
    }
    const auto side = static_cast<std::uint64_t>(limits.side);
    if (width > side || height > side || width * height > limits.pixels) {
        return fmt::format("the picture is {} x {} pixels; at most {} million are taken", width,
                           height, limits.pixels / 1'000'000);
    }
    return {};
}

Result<code::GreyPicture, PhotoFault> decode(std::span<const std::uint8_t> bytes,
                                             const Limits& limits) {
    if (bytes.size() > limits.bytes) {
        return Failure{
            PhotoFault{fmt::format("the file is larger than {} MiB", limits.bytes >> 20U)}};
    }
    const bool png = starts_with(bytes, png_magic);
    if (!png && !starts_with(bytes, jpeg_magic)) {
        return Failure{PhotoFault{
            is_heif(bytes) ? "this is a HEIC picture, as some telephones take them, and cannot be "
                             "read here: send it as JPEG, or set the camera to JPEG"
                           : "it is neither a PNG nor a JPEG picture"}};
    }
    auto decoded = png ? decode_png(bytes, limits) : decode_jpeg(bytes, limits);
    if (!decoded) {
        return decoded;
    }
    auto picture = std::move(decoded).value();
    while (pixels(picture) > limits.read_pixels) {
        picture = halved(picture);
    }
    return picture;
}

} // namespace thawslip::photo
