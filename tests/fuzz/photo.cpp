// The bytes of a picture: decoded, searched for codes, the codes' texts read. The limits are
// smaller than the program's, or one input in three would be a hundred megapixels of nothing.

#include "photo/photo.h"

#include "code/message.h"
#include "fuzz/target.h"

using namespace thawslip;

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    photo::Limits limits;
    limits.pixels = 1'000'000;
    limits.read_pixels = 120'000;
    const auto picture = photo::decode({data, size}, limits);
    if (!picture) {
        fuzz::hold(!picture.fault().message.empty(), "a refusal says why");
        return 0;
    }
    const auto pixels = static_cast<std::uint64_t>(picture.value().width) *
                        static_cast<std::uint64_t>(picture.value().height);
    fuzz::hold(pixels == picture.value().pixels.size() && pixels <= limits.read_pixels,
               "a picture is as large as it says, and within the limits");
    constexpr int modules = 6'000; // some two symbols: without the optimiser, a second
    for (const auto& text : code::read_picture(picture.value(), modules)) {
        const auto message = code::parse(text);
        fuzz::hold(message.ok() || !message.fault().message.empty(), "a refusal says why");
    }
    return 0;
}
