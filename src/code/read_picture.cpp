#include "code/read_picture.h"

#include "base/list.h"
#include "code/filters.h"
#include "code/finders.h"
#include "code/recover/recover.h"
#include "code/unroll.h"
#include "code/zxing.h"

#include <algorithm>
#include <array>
#include <cstddef>
#include <numeric>

namespace thawslip::code {
namespace {

// A code that fills a quarter of a picture this wide has 4 pixels a module.
constexpr int widest_to_repair = 1600;

// The smallest code, version 1, at a pixel a module. ZXing-C++ 1.4 also reads beyond the memory of
// pictures that are only a few pixels high.
bool is_large_enough(const GreyPicture& picture) {
    constexpr int least_side = 21;
    return std::min(picture.width, picture.height) >= least_side;
}

using Texts = std::vector<std::string>;

Texts read(const GreyPicture& picture, ZXing::DecodeHints hints) {
    if (!is_large_enough(picture)) {
        return {};
    }
    const ZXing::ImageView view{picture.pixels.data(), picture.width, picture.height,
                                ZXing::ImageFormat::Lum};
    hints.setFormats(ZXing::BarcodeFormat::QRCode);
    Texts texts;
    for (const ZXing::Result& result : ZXing::ReadBarcodes(view, hints)) {
        if (result.isValid() && std::ranges::find(texts, result.text()) == texts.end()) {
            texts.push_back(result.text());
        }
    }
    return texts;
}

Texts read(const GreyPicture& picture, ZXing::Binarizer binarizer) {
    return read(picture, ZXing::DecodeHints{}.setBinarizer(binarizer));
}

int sum_of_square(const GreyPicture& picture, int left, int top, int side) {
    int sum = 0;
    for (int y = top; y < top + side; ++y) {
        const auto* row = &picture.pixels[picture.index(left, y)];
        sum = std::accumulate(row, row + side, sum);
    }
    return sum;
}

/// Every `step`-th pixel is the mean of a square of step × step.
GreyPicture shrunk(const GreyPicture& picture, int step) {
    GreyPicture small{picture.width / step, picture.height / step, {}};
    small.pixels.reserve(static_cast<std::size_t>(small.width) *
                         static_cast<std::size_t>(small.height));
    for (int y = 0; y < small.height; ++y) {
        for (int x = 0; x < small.width; ++x) {
            const int sum = sum_of_square(picture, x * step, y * step, step);
            small.pixels.push_back(static_cast<std::uint8_t>(sum / (step * step)));
        }
    }
    return small;
}

/// By local thresholds and by one: of several sound codes each may lose one to the other.
Texts read_either(const GreyPicture& picture) {
    auto texts = read(picture, ZXing::Binarizer::LocalAverage);
    add_all_once(texts, read(picture, ZXing::Binarizer::GlobalHistogram));
    return texts;
}

// Half the widths that ink has at most: of a code that fills most of a picture, and of a small one.
constexpr std::array reaches = {24, 12};

// Boxes of blurs of some 1.4 to 4.5 pixels.
constexpr std::array boxes = {5, 3, 7, 9};

Texts read_evened(const std::vector<GreyPicture>& even) {
    for (const auto& picture : even) {
        if (auto texts = read_either(picture); !texts.empty()) {
            return texts;
        }
    }
    return {};
}

Texts read_recovered(const GreyPicture& even, int modules) {
    const auto text = recovered(even, modules);
    return text ? Texts{*text} : Texts{};
}

Texts read_sharpened(const GreyPicture& even, int modules) {
    for (const int box : boxes) {
        const auto sharp = sharpened(even, box);
        auto texts = read_either(sharp);
        texts =
            texts.empty() ? read_recovered(sharp, modules / static_cast<int>(boxes.size())) : texts;
        if (!texts.empty()) {
            return texts;
        }
    }
    return {};
}

Texts read_unrolled(const GreyPicture& even) {
    for (const auto& finders : find_finders(even)) {
        for (const auto& bend : likely_bends(finders)) {
            auto texts = read(unrolled(even, finders, bend), ZXing::Binarizer::LocalAverage);
            if (!texts.empty()) {
                return texts;
            }
        }
    }
    return {};
}

/// What takes the longest, and is needed by the fewest photographs.
Texts read_repaired(const GreyPicture& picture, int modules) {
    std::vector<GreyPicture> even;
    for (const int reach : reaches) {
        even.push_back(evened(picture, reach));
    }
    auto texts = read_evened(even);
    texts = texts.empty() ? read_recovered(even.front(), modules) : texts;
    texts = texts.empty() ? read_unrolled(even.front()) : texts;
    return texts.empty() ? read_sharpened(even.front(), modules) : texts;
}

/// Whether so much looks like finder patterns that trying all threes of them takes longer than a
/// frame may: 100 take 50 ms, 400 some seconds. Fourteen labels have 42.
bool is_crowded(const GreyPicture& frame) {
    constexpr std::size_t most = 100;
    constexpr int step = 5; // rows; ZXing-C++ looks at every fifth of 720 too
    return is_large_enough(frame) && count_finder_patterns(black_and_white(frame), step) > most;
}

} // namespace

std::vector<std::string> read_quickly(const GreyPicture& frame) {
    if (frame.width > largest_frame || frame.height > largest_frame ||
        std::int64_t{frame.width} * frame.height > largest_frame || is_crowded(frame)) {
        return {};
    }
    return read(frame, ZXing::DecodeHints{}
                           .setBinarizer(ZXing::Binarizer::LocalAverage)
                           .setTryHarder(false)
                           .setTryRotate(false) // a QR Code needs no turning
                           .setTryDownscale(false));
}

std::vector<std::string> read_picture(const GreyPicture& picture, int modules) {
    auto texts = read_either(picture);
    const int widest = std::max(picture.width, picture.height);
    const int step = (widest + widest_to_repair - 1) / widest_to_repair;
    const GreyPicture handy = step > 1 ? shrunk(picture, step) : picture;
    if (step > 1) {
        add_all_once(texts, read_either(handy));
    }
    return texts.empty() && is_large_enough(handy) ? read_repaired(handy, modules) : texts;
}

} // namespace thawslip::code
