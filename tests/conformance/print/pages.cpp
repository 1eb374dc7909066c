#include "pages.h"

#define ZX_USE_UTF8 1
#include <ZXing/ReadBarcode.h>
#include <algorithm>
#include <regex>

namespace thawslip::test_support {
namespace {

std::string decoded(std::string text) {
    const std::pair<const char*, const char*> entities[] = {
        {"&lt;", "<"}, {"&gt;", ">"}, {"&quot;", "\""}, {"&apos;", "'"}, {"&amp;", "&"}};
    for (const auto& [entity, character] : entities) {
        for (auto at = text.find(entity); at != std::string::npos; at = text.find(entity, at + 1)) {
            text.replace(at, std::string{entity}.size(), character);
        }
    }
    return text;
}

} // namespace

Outcome run_thawslip(const std::string& arguments) {
    // What the tests print is nobody's freezer: their archive goes when they do.
    static const ScratchFolder data;
    return run("export XDG_DATA_HOME=" + shell_word(data.path().string()) + "; " +
               std::string{THAWSLIP_PROGRAM} + " " + arguments);
}

std::vector<Page> read_pages(const std::string& pdf) {
    const auto xml = run("pdftotext -raw -bbox " + shell_word(pdf) + " -");
    const std::regex line{R"re(<page width="([\d.]+)" height="([\d.]+)">|)re"
                          R"re(<word xMin="([\d.]+)" yMin="([\d.]+)" xMax="([\d.]+)" )re"
                          R"re(yMax="([\d.]+)">([^<]*)</word>)re"};
    std::vector<Page> pages;
    std::istringstream lines{xml.out}; // line by line: std::regex recurses over what it reads
    std::string text;
    while (std::getline(lines, text)) {
        std::smatch m;
        if (!std::regex_search(text, m, line)) {
            continue;
        }
        if (m[1].matched) {
            pages.push_back({std::stod(m[1]), std::stod(m[2]), {}});
        } else {
            pages.back().words.push_back({decoded(m[7]), std::stod(m[3]), std::stod(m[4]),
                                          std::stod(m[5]), std::stod(m[6])});
        }
    }
    return pages;
}

std::string words_in(const Page& page, const Rect& cell) {
    std::string text;
    for (const auto& word : page.words) {
        const double x = (word.left + word.right) / 2;
        const double y = (word.top + word.bottom) / 2;
        if (x > cell.left().in_points() && x < cell.right().in_points() &&
            y > cell.top().in_points() && y < cell.bottom().in_points()) {
            text += (text.empty() ? "" : " ") + word.text;
        }
    }
    return text;
}

Raster rasterise(const std::string& pdf, int page, int dots_per_inch) {
    const auto number = std::to_string(page);
    const auto pgm = run("pdftoppm -gray -r " + std::to_string(dots_per_inch) + " -f " + number +
                         " -l " + number + " " + shell_word(pdf))
                         .out;
    Raster raster;
    std::istringstream header{pgm.substr(0, 64)};
    std::string magic;
    int white = 0;
    header >> magic >> raster.width >> raster.height >> white;
    const auto count =
        static_cast<std::size_t>(raster.width) * static_cast<std::size_t>(raster.height);
    if (magic != "P5" || pgm.size() < count) {
        throw std::runtime_error{"pdftoppm gave no picture of " + pdf};
    }
    raster.pixels.assign(pgm.end() - static_cast<std::ptrdiff_t>(count), pgm.end());
    return raster;
}

std::string read_code(const Raster& raster, const Rect& cell, int dots_per_inch) {
    const auto pixel = [dots_per_inch](Length length) {
        return static_cast<int>(length.in_inches() * dots_per_inch);
    };
    const int left = std::max(pixel(cell.left()), 0);
    const int top = std::max(pixel(cell.top()), 0);
    const int width = std::min(pixel(cell.size.width), raster.width - left);
    const int height = std::min(pixel(cell.size.height), raster.height - top);
    const ZXing::ImageView page{raster.pixels.data(), raster.width, raster.height,
                                ZXing::ImageFormat::Lum};
    ZXing::DecodeHints hints;
    hints.setFormats(ZXing::BarcodeFormat::QRCode);
    const auto result = ZXing::ReadBarcode(page.cropped(left, top, width, height), hints);
    return result.isValid() ? result.text() : std::string{};
}

} // namespace thawslip::test_support
