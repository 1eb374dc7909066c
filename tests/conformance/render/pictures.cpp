#include "pictures.h"

#include "render/pdf.h"
#include "render/svg.h"
#include "support/command.h"

#include <algorithm>
#include <png.h>
#include <stdexcept>

namespace thawslip::test_support {
namespace {

Raster raster_from_png(const std::string& bytes) {
    png_image image{};
    image.version = PNG_IMAGE_VERSION;
    if (png_image_begin_read_from_memory(&image, bytes.data(), bytes.size()) == 0) {
        throw std::runtime_error{"no picture in PNG"};
    }
    image.format = PNG_FORMAT_GRAY;
    Raster raster{static_cast<int>(image.width), static_cast<int>(image.height), {}};
    raster.pixels.resize(PNG_IMAGE_SIZE(image));
    const png_color white{255, 255, 255};
    if (png_image_finish_read(&image, &white, raster.pixels.data(), 0, nullptr) == 0) {
        throw std::runtime_error{"a broken picture in PNG"};
    }
    return raster;
}

} // namespace

Raster pdf_picture(const layout::Frame& frame, const typeset::FontSet& fonts, int dots_per_inch) {
    const ScratchFolder folder;
    const auto file = folder / "frame.pdf";
    write_file(file, render::pdf({frame}, fonts, {"Frame", "en", {}}));
    return rasterise(file, 1, dots_per_inch);
}

Raster svg_picture(const layout::Frame& frame, const typeset::FontSet& fonts, int dots_per_inch) {
    const ScratchFolder folder;
    const auto file = folder / "frame.svg";
    write_file(file, render::svg(frame, fonts, "Frame"));
    const auto dots = std::to_string(dots_per_inch);
    const auto drawn = run("rsvg-convert --format=png --dpi-x=" + dots + " --dpi-y=" + dots + " " +
                           shell_word(file));
    if (drawn.status != 0 || !drawn.err.empty()) {
        throw std::runtime_error{"rsvg-convert: " + drawn.err};
    }
    return raster_from_png(drawn.out);
}

Point middle_of_ink(const Raster& page, const Rect& area, int dots_per_inch) {
    const auto dots = [dots_per_inch](Length length, int most) {
        return std::clamp(static_cast<int>(length.in_inches() * dots_per_inch), 0, most);
    };
    double ink = 0.0, x_sum = 0.0, y_sum = 0.0;
    for (int y = dots(area.top(), page.height); y < dots(area.bottom(), page.height); ++y) {
        for (int x = dots(area.left(), page.width); x < dots(area.right(), page.width); ++x) {
            const double dark = 255 - page.at(x, y);
            ink += dark;
            x_sum += dark * (x + 0.5);
            y_sum += dark * (y + 0.5);
        }
    }
    if (ink == 0.0) {
        throw std::runtime_error{"no ink"};
    }
    return {Length::inches(x_sum / ink / dots_per_inch),
            Length::inches(y_sum / ink / dots_per_inch)};
}

} // namespace thawslip::test_support
